package oakum.physics.hygrothermal;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;

/** Refuses walls, climates and plans without meaning, naming the layer and the value. */
final class InputCheck {
    private static final String SOURCE =
            "range in which the calculation has a meaning (proposed here, no published source)";
    private static final int MOST_HOURS = 438_300;
    private static final int CURVE_POINTS = 400;

    private final List<Violation> violations = new ArrayList<>();

    private InputCheck() {}

    static void check(Wall wall, Climate climate, RunPlan plan) {
        InputCheck check = new InputCheck();
        check.wall(wall);
        check.plan(plan);
        check.end();
        check.climate(climate, plan.hours());
        check.end();
    }

    static void checkGrid(Wall wall, List<double[]> widths) {
        InputCheck check = new InputCheck();
        if (widths.size() != wall.layers().size()) {
            check.refuse(
                    "grid",
                    widths.size(),
                    "The grid has " + widths.size() + " layers, the wall "
                            + wall.layers().size() + ".");
            check.end();
        }
        for (int l = 0; l < widths.size(); l++) {
            WallLayer layer = wall.layers().get(l);
            double thickness = layer instanceof SolidLayer solid
                    ? solid.thicknessM()
                    : layer instanceof AirLayer air ? air.thicknessM() : 0;
            double sum = 0;
            for (double width : widths.get(l)) {
                sum += width > 0 ? width : Double.NaN;
            }
            if (!(Math.abs(sum - thickness) <= 1e-9 * Math.max(1e-3, thickness))) {
                check.refuse(
                        "grid[" + l + "]",
                        sum,
                        "The cells of layer \"" + layer.name() + "\" are " + sum + " m thick together, the layer "
                                + thickness + " m.");
            }
        }
        check.end();
    }

    private void wall(Wall wall) {
        boolean solid = false;
        for (int l = 0; l < wall.layers().size(); l++) {
            WallLayer layer = wall.layers().get(l);
            String at = "layers[" + l + "].";
            if (layer instanceof SolidLayer one) {
                solid = true;
                solid(at, one);
            } else if (layer instanceof AirLayer one) {
                range(at + "thicknessM", one.name(), one.thicknessM(), 0.001, 1, "m");
                range(at + "faceHeatWPerM2K", one.name(), one.faceHeatWPerM2K(), 0.1, 50, "W/(m2.K)");
                range(at + "faceVapourSPerM", one.name(), one.faceVapourSPerM(), 1e-10, 1e-5, "s/m");
                range(at + "initialHumidityFraction", one.name(), one.initialHumidityFraction(), 0, 1, "1");
            } else if (layer instanceof MembraneLayer one) {
                membrane(at, one);
            }
        }
        if (!solid) {
            refuse("layers", wall.layers().size(), "A wall needs at least one layer of a solid material.");
            return;
        }
        face("inside", wall.inside());
        face("outside", wall.outside());
        for (int p = 0; p < wall.planes().size(); p++) {
            Plane plane = wall.planes().get(p);
            if (index("planes[" + p + "].layer", plane.name(), plane.layer(), wall)) {
                range(
                        "planes[" + p + "].depthInLayerM",
                        plane.name(),
                        plane.depthInLayerM(),
                        0,
                        thickness(wall, plane.layer()),
                        "m");
            }
        }
        for (int s = 0; s < wall.sources().size(); s++) {
            source("sources[" + s + "].", wall.sources().get(s), wall);
        }
    }

    private void source(String at, MoistureSource source, Wall wall) {
        if (index(at + "layer", "moisture source", source.layer(), wall)) {
            if (!(wall.layers().get(source.layer()) instanceof SolidLayer)) {
                refuse(
                        at + "layer",
                        source.layer(),
                        "Moisture can land in a solid layer only; \""
                                + wall.layers().get(source.layer()).name() + "\" is none.");
                return;
            }
            range(at + "depthM", "moisture source", source.depthM(), 1e-5, thickness(wall, source.layer()), "m");
        }
        double most = source.kind() == MoistureSource.Kind.RAIN ? 1 : 10;
        range(at + "share", "moisture source", source.share(), 0, most, "1");
    }

    private boolean index(String field, String name, int layer, Wall wall) {
        boolean there = layer >= 0 && layer < wall.layers().size() && thickness(wall, layer) > 0;
        if (!there) {
            refuse(
                    field,
                    layer,
                    "\"" + name + "\" lies in layer " + layer + ", which has no thickness or is not there.");
        }
        return there;
    }

    private static double thickness(Wall wall, int layer) {
        WallLayer one = wall.layers().get(layer);
        return one instanceof SolidLayer solid
                ? solid.thicknessM()
                : one instanceof AirLayer air ? air.thicknessM() : 0;
    }

    private void solid(String at, SolidLayer layer) {
        range(at + "thicknessM", layer.name(), layer.thicknessM(), 1e-4, 30, "m");
        range(at + "densityKgPerM3", layer.name(), layer.densityKgPerM3(), 5, 12000, "kg/m3");
        range(at + "heatCapacityJPerKgK", layer.name(), layer.heatCapacityJPerKgK(), 100, 5000, "J/(kg.K)");
        range(at + "initialHumidityFraction", layer.name(), layer.initialHumidityFraction(), 0, 1, "1");
        curve(at, layer);
    }

    /** Walks the material's curves: water must rise, nothing may be missing. */
    private void curve(String at, SolidLayer layer) {
        LayerProperties properties = layer.properties();
        Cells cells = new Cells(1);
        double waterBefore = -1;
        double liquidBefore = -1;
        for (int k = 1; k <= CURVE_POINTS; k++) {
            double humidity = k / (double) CURVE_POINTS;
            double coordinate = properties.coordinate(humidity);
            cells.temperatureC[0] = 10;
            cells.coordinate[0] = coordinate;
            properties.evaluate(cells, 0, 1);
            String where = "of layer \"" + layer.name() + "\" at a relative humidity of " + humidity;
            if (!(cells.water[0] >= waterBefore) || !(cells.waterSlope[0] > 0) || !(cells.water[0] < 1e4)) {
                refuse(
                        at + "properties.water",
                        cells.water[0],
                        "The water content " + where + " is " + cells.water[0] + " kg/m³ after " + waterBefore
                                + " kg/m³ before; it must rise with humidity.");
                return;
            }
            if (!(cells.liquidPotential[0] >= liquidBefore) || !(cells.liquidPotential[0] < 1)) {
                refuse(
                        at + "properties.liquid",
                        cells.liquidPotential[0],
                        "The liquid transport " + where + " has no meaning: " + cells.liquidPotential[0] + " after "
                                + liquidBefore + ".");
                return;
            }
            if (!(cells.vapourResistivity[0] > 0)
                    || !(cells.heatResistivity[0] > 0)
                    || !(cells.heatResistivity[0] < 1e6)) {
                refuse(
                        at + "properties",
                        cells.vapourResistivity[0],
                        "The resistance " + where + " is " + cells.vapourResistivity[0] + " m·s·Pa/kg to vapour and "
                                + cells.heatResistivity[0] + " m·K/W to heat; both must be above 0.");
                return;
            }
            waterBefore = cells.water[0];
            liquidBefore = cells.liquidPotential[0];
        }
    }

    private void membrane(String at, MembraneLayer layer) {
        if (layer.points().isEmpty()) {
            refuse(at + "points", 0, "The membrane \"" + layer.name() + "\" has no s_d.");
        }
        double before = -1;
        for (int i = 0; i < layer.points().size(); i++) {
            MembraneLayer.Point point = layer.points().get(i);
            String field = at + "points[" + i + "].";
            range(field + "sdM", layer.name(), point.sdM(), 0.001, 10000, "m");
            range(field + "meanHumidityFraction", layer.name(), point.meanHumidityFraction(), 0, 1, "1");
            if (point.meanHumidityFraction() <= before) {
                refuse(
                        field + "meanHumidityFraction",
                        point.meanHumidityFraction(),
                        "The points of \"" + layer.name() + "\" must rise in humidity; " + point.meanHumidityFraction()
                                + " follows " + before + ".");
            }
            before = point.meanHumidityFraction();
        }
    }

    private void face(String at, Face face) {
        if (face.kind() == Face.Kind.FILM) {
            range(at + ".heatWPerM2K", at + " face", face.heatWPerM2K(), 0.1, 1000, "W/(m2.K)");
            range(at + ".vapourSPerM", at + " face", face.vapourSPerM(), 1e-12, 1e-2, "s/m");
        }
    }

    private void plan(RunPlan plan) {
        range("plan.hours", "run", plan.hours(), 1, MOST_HOURS, "h");
        range("plan.initialTemperatureC", "run", plan.initialTemperatureC(), -40, 80, "Cel");
        range("plan.baseStepS", "run", plan.baseStepS(), 1, 3600, "s");
        range("plan.errorK", "run", plan.errorK(), 0.001, 10, "K");
        range("plan.newtonK", "run", plan.newtonK(), 1e-9, 0.5, "K");
        range("plan.grid.firstCellM", "run", plan.grid().firstCellM(), 1e-6, 0.01, "m");
        range("plan.grid.growth", "run", plan.grid().growth(), 1, 2, "1");
        range(
                "plan.grid.widestCellM",
                "run",
                plan.grid().widestCellM(),
                plan.grid().firstCellM(),
                10,
                "m");
        range("plan.grid.refinement", "run", plan.grid().refinement(), 1, 32, "1");
    }

    private void climate(Climate climate, int hours) {
        ClimateState state = new ClimateState();
        for (int hour = 0; hour < hours && violations.isEmpty(); hour++) {
            climate.at(hour, 0, state);
            climate(hour, state);
            if (hour == hours - 1) {
                climate.at(hour, 1, state);
                climate(hour, state);
            }
        }
    }

    private void climate(int hour, ClimateState state) {
        String at = "climate[" + hour + "].";
        String name = "climate of hour " + hour;
        range(at + "outdoorTemperatureC", name, state.outdoorTemperatureC, -80, 80, "Cel");
        range(at + "outdoorEquivalentC", name, state.outdoorEquivalentC, -100, 120, "Cel");
        range(at + "outdoorVapourPa", name, state.outdoorVapourPa, 0, 20000, "Pa");
        range(at + "rainKgPerM2S", name, state.rainKgPerM2S, 0, 0.1, "kg/(m2.s)");
        range(at + "indoorTemperatureC", name, state.indoorTemperatureC, -80, 120, "Cel");
        range(at + "indoorVapourPa", name, state.indoorVapourPa, 0, 20000, "Pa");
        range(at + "airflowM3PerM2S", name, state.airflowM3PerM2S, -0.1, 0.1, "m3/(m2.s)");
        range(at + "leakM3PerM2S", name, state.leakM3PerM2S, 0, 0.1, "m3/(m2.s)");
        range(at + "cavityAirChangesPerHour", name, state.cavityAirChangesPerHour, 0, 10000, "1/h");
    }

    private void range(String field, String name, double value, double min, double max, String unit) {
        if (!(value >= min && value <= max)) {
            String what = field.substring(field.lastIndexOf('.') + 1);
            violations.add(new Violation(
                    field,
                    String.valueOf(value),
                    min,
                    max,
                    unit,
                    SOURCE,
                    "\"" + name + "\": " + what + " is " + value + ", allowed " + min + " to " + max + " " + unit
                            + "."));
        }
    }

    private void refuse(String field, Object value, String sentence) {
        violations.add(Violation.of(field, value, sentence, SOURCE));
    }

    private void end() {
        if (!violations.isEmpty()) {
            throw new Refused(violations);
        }
    }
}
