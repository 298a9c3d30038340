package oakum.physics.hygrothermal;

import oakum.physics.moistair.Iso13788Saturation;

/** The solver's cells as the hours of a run show them. */
final class CellView implements HourView {
    private static final double WORST_DEPTH_M = 0.005;

    private final Wall wall;
    private final WallModel model;
    private final WallSolver solver;
    private final Climate climate;
    private final ClimateState state = new ClimateState();
    private final int[] planeCell;
    private final int[] planeNext;
    private final double[] planeShare;
    private int hour;
    private double insideWater;
    private double outsideWater;
    private double insideHeat;
    private double insideWaterHour;
    private double outsideWaterHour;
    private double insideHeatHour;

    CellView(Wall wall, WallModel model, WallSolver solver, Climate climate) {
        this.wall = wall;
        this.model = model;
        this.solver = solver;
        this.climate = climate;
        int planes = wall.planes().size();
        planeCell = new int[planes];
        planeNext = new int[planes];
        planeShare = new double[planes];
        for (int p = 0; p < planes; p++) {
            place(p, wall.planes().get(p));
        }
    }

    /** Between the centres of two cells of the plane's own layer; at the layer's faces the outermost cell. */
    private void place(int p, Plane plane) {
        int from = model.layerFrom[plane.layer()];
        int to = model.layerTo[plane.layer()];
        double centre = model.half[from];
        int i = from;
        while (i + 1 < to && centre + model.half[i] + model.half[i + 1] <= plane.depthInLayerM()) {
            centre += model.half[i] + model.half[i + 1];
            i++;
        }
        planeCell[p] = i;
        planeNext[p] = Math.min(i + 1, to - 1);
        double span = model.half[i] + model.half[planeNext[p]];
        planeShare[p] = planeNext[p] == i ? 0 : Math.max(0, Math.min(1, (plane.depthInLayerM() - centre) / span));
    }

    void endOfHour(int hoursDone) {
        hour = hoursDone;
        climate.at(hoursDone - 1, 1, state);
        double in = -solver.ledger.waterOut(Ledger.INSIDE);
        double out = -solver.ledger.waterOut(Ledger.OUTSIDE) - solver.ledger.waterOut(Ledger.RAIN);
        double heat = -solver.ledger.heatOut(Ledger.INSIDE);
        insideWaterHour = in - insideWater;
        outsideWaterHour = out - outsideWater;
        insideHeatHour = heat - insideHeat;
        insideWater = in;
        outsideWater = out;
        insideHeat = heat;
    }

    double humidity(int cell) {
        return model.runOf(cell).properties().relativeHumidity(solver.startCoordinate[cell]);
    }

    @Override
    public int hour() {
        return hour;
    }

    @Override
    public int layers() {
        return wall.layers().size();
    }

    double layerWaterKgPerM2(int layer) {
        double sum = 0;
        for (int i = model.layerFrom[layer]; i < model.layerTo[layer]; i++) {
            sum += model.width[i] * solver.startWater[i];
        }
        return sum;
    }

    double thicknessM(int layer) {
        WallLayer one = wall.layers().get(layer);
        return one instanceof SolidLayer solid
                ? solid.thicknessM()
                : one instanceof AirLayer air ? air.thicknessM() : 0;
    }

    @Override
    public double layerWaterKgPerM3(int layer) {
        double thickness = thicknessM(layer);
        return thickness == 0 ? 0 : layerWaterKgPerM2(layer) / thickness;
    }

    /** Slides a window of 5 mm over the layer; the wettest lies with one of its edges on the edge of a cell. */
    @Override
    public double layerWorstWaterKgPerM3(int layer) {
        int from = model.layerFrom[layer];
        int to = model.layerTo[layer];
        double thickness = thicknessM(layer);
        if (thickness <= WORST_DEPTH_M) {
            return layerWaterKgPerM3(layer);
        }
        double worst = 0;
        double sum = 0;
        double span = 0;
        int end = from;
        for (int first = from; first < to; first++) {
            while (end < to && span < WORST_DEPTH_M) {
                sum += model.width[end] * solver.startWater[end];
                span += model.width[end];
                end++;
            }
            if (span < WORST_DEPTH_M - 1e-12) {
                break;
            }
            worst = Math.max(worst, sum - Math.max(0, span - WORST_DEPTH_M) * solver.startWater[end - 1]);
            sum -= model.width[first] * solver.startWater[first];
            span -= model.width[first];
        }
        return Math.max(worst, fromTheOuterFace(from, to)) / WORST_DEPTH_M;
    }

    private double fromTheOuterFace(int from, int to) {
        double sum = 0;
        double left = WORST_DEPTH_M;
        for (int i = to - 1; i >= from && left > 0; i--) {
            double taken = Math.min(left, model.width[i]);
            sum += taken * solver.startWater[i];
            left -= taken;
        }
        return sum;
    }

    @Override
    public int planes() {
        return planeCell.length;
    }

    @Override
    public double planeTemperatureC(int plane) {
        double a = solver.startTemperature[planeCell[plane]];
        return a + planeShare[plane] * (solver.startTemperature[planeNext[plane]] - a);
    }

    @Override
    public double planeHumidity(int plane) {
        double a = humidity(planeCell[plane]);
        return a + planeShare[plane] * (humidity(planeNext[plane]) - a);
    }

    @Override
    public double insideFaceTemperatureC() {
        return faceTemperature(0, wall.inside(), state.indoorTemperatureC);
    }

    @Override
    public double insideFaceHumidity() {
        return faceHumidity(0, wall.inside(), model.insideCoatings, state.indoorTemperatureC, state.indoorVapourPa);
    }

    @Override
    public double outsideFaceTemperatureC() {
        return faceTemperature(model.count - 1, wall.outside(), state.outdoorEquivalentC);
    }

    @Override
    public double outsideFaceHumidity() {
        return faceHumidity(
                model.count - 1,
                wall.outside(),
                model.outsideCoatings,
                state.outdoorEquivalentC,
                state.outdoorVapourPa);
    }

    private double faceTemperature(int cell, Face face, double besideC) {
        double own = solver.startTemperature[cell];
        return switch (face.kind()) {
            case GIVEN -> besideC;
            case CLOSED -> own;
            case FILM -> {
                double film = 1 / face.heatWPerM2K();
                double inner = model.half[cell] * solver.cells.heatResistivity[cell];
                yield besideC + (own - besideC) * film / (film + inner);
            }
        };
    }

    private double faceHumidity(
            int cell, Face face, java.util.List<MembraneLayer> coatings, double besideC, double besidePa) {
        double own = humidity(cell);
        double ownPa = own * Iso13788Saturation.pressurePa(solver.startTemperature[cell]);
        return switch (face.kind()) {
            case GIVEN -> besidePa / Iso13788Saturation.pressurePa(besideC);
            case CLOSED -> own;
            case FILM -> {
                double film = 1 / face.vapourSPerM();
                double inner = model.half[cell] * solver.cells.vapourResistivity[cell];
                for (MembraneLayer coating : coatings) {
                    inner += WallModel.resistance(coating.sdM(own));
                }
                double pressure = besidePa + (ownPa - besidePa) * film / (film + inner);
                yield pressure / Iso13788Saturation.pressurePa(faceTemperature(cell, face, besideC));
            }
        };
    }

    @Override
    public double insideMoistureKgPerM2() {
        return insideWaterHour;
    }

    @Override
    public double outsideMoistureKgPerM2() {
        return outsideWaterHour;
    }

    @Override
    public double insideHeatJPerM2() {
        return insideHeatHour;
    }

    @Override
    public double waterKgPerM2() {
        return solver.waterKgPerM2();
    }
}
