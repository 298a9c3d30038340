package oakum.physics.hygrothermal;

import static oakum.physics.hygrothermal.Constants.AIR_HEAT_CAPACITY_J_PER_M3_K;
import static oakum.physics.hygrothermal.Constants.LATENT_HEAT_J_PER_KG;
import static oakum.physics.hygrothermal.Constants.SECONDS_PER_HOUR;
import static oakum.physics.hygrothermal.Constants.VAPOUR_GAS_CONSTANT_J_PER_KG_K;
import static oakum.physics.hygrothermal.Constants.WATER_HEAT_CAPACITY_J_PER_KG_K;
import static oakum.physics.hygrothermal.Constants.ZERO_C_IN_K;

import java.util.Arrays;
import java.util.List;
import oakum.physics.moistair.Iso13788Saturation;

/**
 * Steps a wall through time: finite volumes, the two balances of EN 15026 in every cell, the two-stage diagonally
 * implicit Runge-Kutta method of second order that is L-stable and stiffly accurate (Alexander 1977, SIAM J. Numer.
 * Anal. 14, γ = 1 − 1/√2), each stage by Newton's method with the full Jacobian, block-tridiagonal in pairs
 * (temperature, moisture coordinate).
 *
 * <p>Conserved whatever the tolerance: a stage takes the water content and the flows of its last linear system, and
 * those sum to nothing but rounding. The water content is therefore a state of its own; the small distance to the
 * material's curve enters the next stage's balance and does not add up.
 */
final class WallSolver {
    static final double GAMMA = 1 - Math.sqrt(0.5);
    private static final double CARRY = (1 - GAMMA) / GAMMA;
    private static final int MOST_ITERATIONS = 12;
    private static final double LONGEST_CHANGE_K = 40;

    /** How many kelvin a change of all the water a material can bind weighs; relative humidity weighs the same. */
    static final double FULL_SCALE_K = 50;

    /** Room left, as relative humidity, below which a place takes up less and less of the rain that reaches it. */
    private static final double LAST_ROOM = 0.02;

    final WallModel model;
    final Cells cells;
    final Ledger ledger = new Ledger();
    private final Climate climate;
    private final double newtonK;
    private final int count;

    private final ClimateState now = new ClimateState();
    private final double[] saturation;
    private final double[] vapour;
    private final double[] vapourPerK;
    private final double[] vapourSlope;
    private final double[] coordinateWeight;
    private final double[] waterWeight;

    /** Blocks of the linear system, row by row: below, on and above the diagonal; then factors and right-hand side. */
    private final double[] below;

    private final double[] diagonal;
    private final double[] above;
    private final double[] multiplier;
    private final double[] inverse;
    private final double[] right;
    private final double[] estimate;
    private final double[] flow;
    private final double[] target;

    /** State at the start of the step: temperature, coordinate, water; and how fast the last step changed them. */
    final double[] startTemperature;

    final double[] startCoordinate;
    final double[] startWater;
    private final double[] temperatureRate;
    private final double[] coordinateRate;

    private final double[] baseTemperature;
    private final double[] baseWater;
    final double[] stageWater;
    private final double[] firstTemperature;
    private final double[] firstWater;
    private final double[] firstCoordinate;

    /** Moisture through the inner face of each layer and, last, the outer face of the wall, outward, kg/m². */
    final double[] layerFlow;

    private final double[] firstLayerFlow;
    private final double[] secondLayerFlow;

    private double stageHeat;

    long iterations;
    double stepErrorK;
    int worstCell;

    WallSolver(WallModel model, Climate climate, double newtonK) {
        this.model = model;
        this.climate = climate;
        this.newtonK = newtonK;
        count = model.count;
        cells = new Cells(count);
        saturation = new double[count];
        vapour = new double[count];
        vapourPerK = new double[count];
        vapourSlope = new double[count];
        coordinateWeight = new double[count];
        waterWeight = new double[count];
        below = new double[4 * count];
        diagonal = new double[4 * count];
        above = new double[4 * count];
        multiplier = new double[4 * count];
        inverse = new double[4 * count];
        right = new double[2 * count];
        estimate = new double[2 * count];
        flow = new double[count];
        target = new double[count];
        startTemperature = new double[count];
        startCoordinate = new double[count];
        startWater = new double[count];
        temperatureRate = new double[count];
        coordinateRate = new double[count];
        baseTemperature = new double[count];
        baseWater = new double[count];
        stageWater = new double[count];
        firstTemperature = new double[count];
        firstWater = new double[count];
        firstCoordinate = new double[count];
        int layers = model.wall.layers().size();
        layerFlow = new double[layers + 1];
        firstLayerFlow = new double[layers + 1];
        secondLayerFlow = new double[layers + 1];
        for (WallModel.Run run : model.runs) {
            Arrays.fill(coordinateWeight, run.from(), run.to(), run.properties().coordinateWeightK());
            Arrays.fill(
                    waterWeight,
                    run.from(),
                    run.to(),
                    FULL_SCALE_K / run.properties().saturationKgPerM3());
        }
    }

    /** Puts the wall into its state at the start of a run. */
    void start(double temperatureC) {
        Arrays.fill(startTemperature, temperatureC);
        for (WallModel.Run run : model.runs) {
            WallLayer layer = model.wall.layers().get(run.layer());
            double heatCapacity;
            double humidity;
            if (layer instanceof SolidLayer solid) {
                heatCapacity = solid.densityKgPerM3() * solid.heatCapacityJPerKgK();
                humidity = solid.initialHumidityFraction();
            } else {
                heatCapacity = AIR_HEAT_CAPACITY_J_PER_M3_K;
                humidity = ((AirLayer) layer).initialHumidityFraction();
            }
            double coordinate = run.properties().coordinate(humidity);
            for (int i = run.from(); i < run.to(); i++) {
                cells.dryHeatCapacity[i] = heatCapacity;
                startCoordinate[i] = coordinate;
                startWater[i] = run.properties().waterKgPerM3(coordinate);
            }
        }
        Arrays.fill(temperatureRate, 0);
        Arrays.fill(coordinateRate, 0);
    }

    /**
     * Tries one step. When it converges the new state waits in {@link #cells} and {@link #stageWater}, with its error
     * in {@link #stepErrorK}, until {@link #keep}; when it does not, nothing is changed.
     *
     * @param hour number of the hour in which the step lies
     * @param startS start within that hour
     * @param lengthS its length
     */
    boolean tryStep(int hour, double startS, double lengthS) {
        double part = GAMMA * lengthS;
        for (int i = 0; i < count; i++) {
            cells.temperatureC[i] = startTemperature[i] + part * temperatureRate[i];
            target[i] = startCoordinate[i] + part * coordinateRate[i];
        }
        limitFrom(startCoordinate);
        System.arraycopy(target, 0, cells.coordinate, 0, count);
        ledger.beginStep();
        climate.at(hour, (startS + part) / SECONDS_PER_HOUR, now);
        if (!stage(startTemperature, startWater, part)) {
            return false;
        }
        closeStage(startTemperature, firstLayerFlow);
        ledger.closeStage((1 - GAMMA) * lengthS, CARRY * stageHeat, now.rainKgPerM2S);
        for (int i = 0; i < count; i++) {
            firstTemperature[i] = cells.temperatureC[i];
            firstCoordinate[i] = cells.coordinate[i];
            firstWater[i] = stageWater[i];
            double rise = CARRY * (cells.temperatureC[i] - startTemperature[i]);
            baseTemperature[i] = startTemperature[i] + rise;
            baseWater[i] = startWater[i] + CARRY * (stageWater[i] - startWater[i]);
            cells.temperatureC[i] += rise;
            target[i] = cells.coordinate[i] + CARRY * (cells.coordinate[i] - startCoordinate[i]);
        }
        limitFrom(firstCoordinate);
        System.arraycopy(target, 0, cells.coordinate, 0, count);
        climate.at(hour, (startS + lengthS) / SECONDS_PER_HOUR, now);
        if (!stage(baseTemperature, baseWater, part)) {
            return false;
        }
        closeStage(baseTemperature, secondLayerFlow);
        ledger.closeStage(GAMMA * lengthS, stageHeat, now.rainKgPerM2S);
        estimateError(part);
        return true;
    }

    /** Takes the step that has just been tried. */
    void keep(double lengthS) {
        double rate = 1 / lengthS;
        for (int i = 0; i < count; i++) {
            temperatureRate[i] = rate * (cells.temperatureC[i] - startTemperature[i]);
            coordinateRate[i] = rate * (cells.coordinate[i] - startCoordinate[i]);
            startTemperature[i] = cells.temperatureC[i];
            startCoordinate[i] = cells.coordinate[i];
            startWater[i] = stageWater[i];
        }
        for (int k = 0; k < layerFlow.length; k++) {
            layerFlow[k] += lengthS * ((1 - GAMMA) * firstLayerFlow[k] + GAMMA * secondLayerFlow[k]);
        }
        ledger.keepStep();
    }

    double waterKgPerM2() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += model.width[i] * startWater[i];
        }
        return sum;
    }

    private void limitFrom(double[] from) {
        for (WallModel.Run run : model.runs) {
            run.properties().limit(from, target, run.from(), run.to());
        }
    }

    /** Newton's method for one stage: (state − base)/lengthS = rates at the state. */
    private boolean stage(double[] baseT, double[] baseW, double lengthS) {
        for (int k = 0; k < MOST_ITERATIONS; k++) {
            iterations++;
            for (WallModel.Run run : model.runs) {
                run.properties().evaluate(cells, run.from(), run.to());
            }
            vapourPressures();
            storage(baseT, baseW, 1 / lengthS);
            neighbours();
            extras();
            eliminate();
            substitute(right);
            double change = update();
            if (!(change < 1e6)) {
                return false;
            }
            if (change < newtonK) {
                return true;
            }
        }
        return false;
    }

    private void vapourPressures() {
        double[] t = cells.temperatureC;
        double[] humidity = cells.humidity;
        double[] humiditySlope = cells.humiditySlope;
        for (int i = 0; i < count; i++) {
            double s = Iso13788Saturation.pressurePa(t[i]);
            double p = humidity[i] * s;
            saturation[i] = s;
            vapour[i] = p;
            vapourPerK[i] = p * Iso13788Saturation.relativeSlopePerK(t[i]);
            vapourSlope[i] = s * humiditySlope[i];
        }
    }

    /** Starts every row with what the cell stores: moisture first, heat second; columns temperature, coordinate. */
    private void storage(double[] baseT, double[] baseW, double perS) {
        double[] t = cells.temperatureC;
        double[] w = cells.water;
        double[] slope = cells.waterSlope;
        double[] dry = cells.dryHeatCapacity;
        double[] width = model.width;
        double[] b = diagonal;
        double[] r = right;
        for (int i = 0; i < count; i++) {
            double m = width[i] * perS;
            double capacity = m * (dry[i] + WATER_HEAT_CAPACITY_J_PER_KG_K * w[i]);
            double rise = t[i] - baseT[i];
            int x = 4 * i;
            double stored = m * slope[i];
            r[2 * i] = m * (w[i] - baseW[i]);
            r[2 * i + 1] = capacity * rise;
            b[x] = 0;
            b[x + 1] = stored;
            b[x + 2] = capacity;
            b[x + 3] = WATER_HEAT_CAPACITY_J_PER_KG_K * stored * rise;
        }
    }

    /** Vapour, liquid inside one material, and heat between each cell and the next. */
    private void neighbours() {
        double[] t = cells.temperatureC;
        double[] rv = cells.vapourResistivity;
        double[] rvu = cells.vapourResistivitySlope;
        double[] rvt = cells.vapourResistivityPerK;
        double[] rh = cells.heatResistivity;
        double[] rhu = cells.heatResistivitySlope;
        double[] rht = cells.heatResistivityPerK;
        double[] theta = cells.liquidPotential;
        double[] thetau = cells.liquidPotentialSlope;
        double[] half = model.half;
        double[] d = model.liquidConductance;
        double[] membrane = model.membraneResistance;
        double[] pv = vapour;
        double[] pvt = vapourPerK;
        double[] pvu = vapourSlope;
        double[] a = below;
        double[] b = diagonal;
        double[] c = above;
        double[] r = right;
        int last = count - 1;
        for (int i = 0; i < last; i++) {
            int j = i + 1;
            int x = 4 * i;
            int y = x + 4;
            double hi = half[i];
            double hj = half[j];
            double g = 1 / (hi * rv[i] + hj * rv[j] + membrane[i]);
            double vapourFlow = g * (pv[i] - pv[j]);
            double gg = g * vapourFlow;
            double vti = g * pvt[i] - gg * hi * rvt[i];
            double vtj = -g * pvt[j] - gg * hj * rvt[j];
            double vui = g * pvu[i] - gg * hi * rvu[i];
            double vuj = -g * pvu[j] - gg * hj * rvu[j];
            double u = 1 / (hi * rh[i] + hj * rh[j]);
            double conducted = u * (t[i] - t[j]);
            double uu = u * conducted;
            double heatFlow = conducted + LATENT_HEAT_J_PER_KG * vapourFlow;
            double qti = u - uu * hi * rht[i] + LATENT_HEAT_J_PER_KG * vti;
            double qtj = -u - uu * hj * rht[j] + LATENT_HEAT_J_PER_KG * vtj;
            double qui = LATENT_HEAT_J_PER_KG * vui - uu * hi * rhu[i];
            double quj = LATENT_HEAT_J_PER_KG * vuj - uu * hj * rhu[j];
            double moistureFlow = vapourFlow + d[i] * (theta[i] - theta[j]);
            double gui = vui + d[i] * thetau[i];
            double guj = vuj - d[i] * thetau[j];
            flow[i] = moistureFlow;
            r[2 * i] += moistureFlow;
            r[2 * i + 1] += heatFlow;
            r[2 * i + 2] -= moistureFlow;
            r[2 * i + 3] -= heatFlow;
            b[x] += vti;
            b[x + 1] += gui;
            b[x + 2] += qti;
            b[x + 3] += qui;
            c[x] = vtj;
            c[x + 1] = guj;
            c[x + 2] = qtj;
            c[x + 3] = quj;
            a[y] = -vti;
            a[y + 1] = -gui;
            a[y + 2] = -qti;
            a[y + 3] = -qui;
            b[y] -= vtj;
            b[y + 1] -= guj;
            b[y + 2] -= qtj;
            b[y + 3] -= quj;
        }
    }

    /** What only some walls or some places have, added to the system after the plain part. */
    private void extras() {
        ledger.beginAssembly();
        for (WallModel.PlacedMembrane placed : model.variableMembranes) {
            variableMembrane(placed);
        }
        for (int i : model.liquidJoints) {
            liquidJoint(i);
        }
        if (now.airflowM3PerM2S != 0) {
            airThroughWall(now.airflowM3PerM2S);
        }
        face(
                0,
                model.wall.inside(),
                model.insideCoatings,
                now.indoorTemperatureC,
                now.indoorVapourPa,
                0,
                Ledger.INSIDE);
        face(
                count - 1,
                model.wall.outside(),
                model.outsideCoatings,
                now.outdoorEquivalentC,
                now.outdoorVapourPa,
                now.rainKgPerM2S,
                Ledger.OUTSIDE);
        for (int cell : model.ventilatedCells) {
            cavityAir(cell);
        }
        for (WallModel.Deposit deposit : model.deposits) {
            if (deposit.kind() == MoistureSource.Kind.RAIN) {
                rainInside(deposit);
            } else {
                airLeak(deposit);
            }
        }
    }

    /** Adds a further resistance to the vapour flow between two cells, as the difference to the flow without it. */
    private void variableMembrane(WallModel.PlacedMembrane placed) {
        int i = placed.interfaceIndex();
        int j = i + 1;
        double mean = 0.5 * (cells.humidity[i] + cells.humidity[j]);
        double added = WallModel.resistance(placed.membrane().sdM(mean));
        double addedSlope = 0.5 * added * placed.membrane().logSlopeAt(mean);
        double without = model.half[i] * cells.vapourResistivity[i]
                + model.half[j] * cells.vapourResistivity[j]
                + model.membraneResistance[i];
        flowBetween(i, without, 0, -1);
        flowBetween(i, without + added, addedSlope, 1);
    }

    /** Adds (sign 1) or takes away (sign −1) the vapour flow over a resistance between a cell and the next. */
    private void flowBetween(int i, double resistanceBetween, double resistanceSlope, double sign) {
        int j = i + 1;
        double g = sign / resistanceBetween;
        double vapourFlow = g * (vapour[i] - vapour[j]);
        double gg = vapourFlow / resistanceBetween;
        addBetween(
                i,
                vapourFlow,
                g * vapourPerK[i] - gg * model.half[i] * cells.vapourResistivityPerK[i],
                g * vapourSlope[i]
                        - gg
                                * (model.half[i] * cells.vapourResistivitySlope[i]
                                        + resistanceSlope * cells.humiditySlope[i]),
                -g * vapourPerK[j] - gg * model.half[j] * cells.vapourResistivityPerK[j],
                -g * vapourSlope[j]
                        - gg
                                * (model.half[j] * cells.vapourResistivitySlope[j]
                                        + resistanceSlope * cells.humiditySlope[j]),
                LATENT_HEAT_J_PER_KG);
    }

    /**
     * Liquid across a joint of two materials: both half cells in series, driven by relative humidity, which has no step
     * at a joint. The slopes of the two conductivities are left out of the Jacobian.
     */
    private void liquidJoint(int i) {
        int j = i + 1;
        double ki = cells.liquidPotentialSlope[i] / cells.humiditySlope[i];
        double kj = cells.liquidPotentialSlope[j] / cells.humiditySlope[j];
        if (!(ki > 0) || !(kj > 0)) {
            return;
        }
        double k = 1 / (model.half[i] / ki + model.half[j] / kj);
        addBetween(
                i,
                k * (cells.humidity[i] - cells.humidity[j]),
                0,
                k * cells.humiditySlope[i],
                0,
                -k * cells.humiditySlope[j],
                0);
    }

    /** Adds a moisture flow from a cell to the next, with heat in proportion to it. */
    private void addBetween(int i, double g, double gti, double gui, double gtj, double guj, double heatPerKg) {
        int x = 4 * i;
        int y = x + 4;
        flow[i] += g;
        right[2 * i] += g;
        right[2 * i + 1] += heatPerKg * g;
        right[2 * i + 2] -= g;
        right[2 * i + 3] -= heatPerKg * g;
        diagonal[x] += gti;
        diagonal[x + 1] += gui;
        diagonal[x + 2] += heatPerKg * gti;
        diagonal[x + 3] += heatPerKg * gui;
        above[x] += gtj;
        above[x + 1] += guj;
        above[x + 2] += heatPerKg * gtj;
        above[x + 3] += heatPerKg * guj;
        below[y] -= gti;
        below[y + 1] -= gui;
        below[y + 2] -= heatPerKg * gti;
        below[y + 3] -= heatPerKg * gui;
        diagonal[y] -= gtj;
        diagonal[y + 1] -= guj;
        diagonal[y + 2] -= heatPerKg * gtj;
        diagonal[y + 3] -= heatPerKg * guj;
    }

    /**
     * Air through the whole wall carries heat and vapour. A face value is interpolated between the two cells as long as
     * diffusion is strong enough to keep that stable, and shifts to the upstream cell as far as it is not.
     */
    private void airThroughWall(double airflow) {
        double heat = AIR_HEAT_CAPACITY_J_PER_M3_K * airflow;
        for (int i = 0; i < count - 1; i++) {
            int j = i + 1;
            double span = model.half[i] + model.half[j];
            double kelvin = 0.5 * (cells.temperatureC[i] + cells.temperatureC[j]) + ZERO_C_IN_K;
            double diffusion = VAPOUR_GAS_CONSTANT_J_PER_KG_K
                    * kelvin
                    / (model.half[i] * cells.vapourResistivity[i]
                            + model.half[j] * cells.vapourResistivity[j]
                            + model.membraneResistance[i]);
            double vi = shareOfFirst(airflow, diffusion, model.half[j] / span);
            double ki = cells.temperatureC[i] + ZERO_C_IN_K;
            double kj = cells.temperatureC[j] + ZERO_C_IN_K;
            double fi = airflow * vi / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * ki);
            double fj = airflow * (1 - vi) / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * kj);
            addBetween(
                    i,
                    fi * vapour[i] + fj * vapour[j],
                    fi * (vapourPerK[i] - vapour[i] / ki),
                    fi * vapourSlope[i],
                    fj * (vapourPerK[j] - vapour[j] / kj),
                    fj * vapourSlope[j],
                    LATENT_HEAT_J_PER_KG);
            double conduction =
                    1 / (model.half[i] * cells.heatResistivity[i] + model.half[j] * cells.heatResistivity[j]);
            double ti = shareOfFirst(heat, conduction, model.half[j] / span);
            double carried = heat * (ti * cells.temperatureC[i] + (1 - ti) * cells.temperatureC[j]);
            right[2 * i + 1] += carried;
            right[2 * i + 3] -= carried;
            diagonal[4 * i + 2] += heat * ti;
            above[4 * i + 2] += heat * (1 - ti);
            below[4 * j + 2] -= heat * ti;
            diagonal[4 * j + 2] -= heat * (1 - ti);
        }
    }

    /** Weight of the first of two cells in the value between them. */
    private static double shareOfFirst(double carried, double diffusion, double interpolated) {
        double upstream = Math.max(0, 1 - diffusion / Math.abs(carried));
        return carried > 0 ? Math.max(interpolated, upstream) : 1 - Math.max(1 - interpolated, upstream);
    }

    private void face(
            int cell,
            Face face,
            List<MembraneLayer> coatings,
            double besideC,
            double besidePa,
            double rain,
            int where) {
        if (face.kind() == Face.Kind.CLOSED) {
            return;
        }
        boolean film = face.kind() == Face.Kind.FILM;
        WallModel.Run run = cell == 0 ? model.runs.get(0) : model.runs.get(model.runs.size() - 1);
        double h = model.half[cell];
        double outerHeat = film ? 1 / face.heatWPerM2K() : 0;
        double u = 1 / (outerHeat + h * cells.heatResistivity[cell]);
        double conducted = u * (cells.temperatureC[cell] - besideC);
        double uu = u * conducted;

        double besideHumidity = besidePa / Iso13788Saturation.pressurePa(besideC);
        double coat = 0;
        double coatSlope = 0;
        for (MembraneLayer coating : coatings) {
            double mean = 0.5 * (cells.humidity[cell] + besideHumidity);
            double one = WallModel.resistance(coating.sdM(mean));
            coat += one;
            coatSlope += 0.5 * one * coating.logSlopeAt(mean);
        }
        // in a film the half cell's vapour and liquid lie side by side: a full cell dries from its surface
        double alone = h * cells.vapourResistivity[cell];
        double helped = film
                ? 1
                        + cells.liquidPotentialSlope[cell]
                                * cells.vapourResistivity[cell]
                                / (cells.humiditySlope[cell] * saturation[cell])
                : 1;
        double g = 1 / ((film ? 1 / face.vapourSPerM() : 0) + coat + alone / helped);
        double out = g * (vapour[cell] - besidePa);
        double gg = g * out / (helped * helped);
        double outT = g * vapourPerK[cell] - gg * h * cells.vapourResistivityPerK[cell];
        double outU = g * vapourSlope[cell]
                - gg * h * cells.vapourResistivitySlope[cell]
                - g * out * coatSlope * cells.humiditySlope[cell];
        add(
                cell,
                where,
                out,
                outT,
                outU,
                conducted + LATENT_HEAT_J_PER_KG * out,
                u - uu * h * cells.heatResistivityPerK[cell] + LATENT_HEAT_J_PER_KG * outT,
                LATENT_HEAT_J_PER_KG * outU - uu * h * cells.heatResistivitySlope[cell]);
        if (now.airflowM3PerM2S != 0) {
            airThroughFace(cell, face, besideC, besidePa, where);
        }
        if (!run.properties().carriesLiquid() || !coatings.isEmpty()) {
            return;
        }
        if (face.kind() == Face.Kind.GIVEN) {
            double outside =
                    run.properties().liquidPotentialKgPerMS(run.properties().coordinate(besideHumidity));
            add(
                    cell,
                    where,
                    (cells.liquidPotential[cell] - outside) / h,
                    0,
                    cells.liquidPotentialSlope[cell] / h,
                    0,
                    0,
                    0);
        } else if (rain > 0) {
            double room =
                    run.properties().liquidPotentialKgPerMS(run.properties().coordinate(1))
                            - cells.liquidPotential[cell];
            boolean all = room > rain * h;
            double taken = all ? rain : Math.max(0, room / h);
            double slope = all || room <= 0 ? 0 : cells.liquidPotentialSlope[cell] / h;
            add(cell, Ledger.RAIN, -taken, 0, slope, 0, 0, 0);
        }
    }

    /** Air that enters brings the state beside the face; air that leaves takes the last cell's vapour and its heat. */
    private void airThroughFace(int cell, Face face, double besideC, double besidePa, int where) {
        double outward = cell == 0 ? -now.airflowM3PerM2S : now.airflowM3PerM2S;
        double heat = AIR_HEAT_CAPACITY_J_PER_M3_K * outward;
        if (outward < 0) {
            double g = outward * besidePa / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * (besideC + ZERO_C_IN_K));
            add(cell, where, g, 0, 0, heat * besideC + LATENT_HEAT_J_PER_KG * g, 0, 0);
            return;
        }
        double kelvin = cells.temperatureC[cell] + ZERO_C_IN_K;
        double f = outward / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * kelvin);
        double g = f * vapour[cell];
        double gT = f * (vapourPerK[cell] - vapour[cell] / kelvin);
        double gU = f * vapourSlope[cell];
        boolean given = face.kind() == Face.Kind.GIVEN;
        double leaving = given ? besideC : cells.temperatureC[cell];
        add(
                cell,
                where,
                g,
                gT,
                gU,
                heat * leaving + LATENT_HEAT_J_PER_KG * g,
                (given ? 0 : heat) + LATENT_HEAT_J_PER_KG * gT,
                LATENT_HEAT_J_PER_KG * gU);
    }

    private void cavityAir(int cell) {
        double airflow = now.cavityAirChangesPerHour * model.width[cell] / SECONDS_PER_HOUR;
        if (airflow == 0) {
            return;
        }
        double heat = AIR_HEAT_CAPACITY_J_PER_M3_K * airflow;
        double kelvin = cells.temperatureC[cell] + ZERO_C_IN_K;
        double f = airflow / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * kelvin);
        double fresh = airflow
                * now.outdoorVapourPa
                / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * (now.outdoorTemperatureC + ZERO_C_IN_K));
        double g = f * vapour[cell] - fresh;
        double gT = f * (vapourPerK[cell] - vapour[cell] / kelvin);
        double gU = f * vapourSlope[cell];
        add(
                cell,
                Ledger.CAVITY,
                g,
                gT,
                gU,
                heat * (cells.temperatureC[cell] - now.outdoorTemperatureC) + LATENT_HEAT_J_PER_KG * g,
                heat + LATENT_HEAT_J_PER_KG * gT,
                LATENT_HEAT_J_PER_KG * gU);
    }

    private void rainInside(WallModel.Deposit deposit) {
        double landing = deposit.share() * now.rainKgPerM2S;
        if (landing == 0) {
            return;
        }
        int i = deposit.cell();
        double room = (1 - cells.humidity[i]) / LAST_ROOM;
        double taken = landing * Math.max(0, Math.min(1, room));
        double slope = room > 0 && room < 1 ? landing * cells.humiditySlope[i] / LAST_ROOM : 0;
        add(i, Ledger.RAIN_INSIDE, -taken, 0, slope, 0, 0, 0);
    }

    private void airLeak(WallModel.Deposit deposit) {
        int i = deposit.cell();
        double indoor = now.indoorVapourPa / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * (now.indoorTemperatureC + ZERO_C_IN_K));
        double kelvin = cells.temperatureC[i] + ZERO_C_IN_K;
        double full = saturation[i] / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * kelvin);
        double air = deposit.share() * now.leakM3PerM2S;
        if (air <= 0 || indoor <= full) {
            return;
        }
        double g = -air * (indoor - full);
        double gT = air * full * (Iso13788Saturation.relativeSlopePerK(cells.temperatureC[i]) - 1 / kelvin);
        add(i, Ledger.AIR_LEAK, g, gT, 0, LATENT_HEAT_J_PER_KG * g, LATENT_HEAT_J_PER_KG * gT, 0);
    }

    /** Adds a flow out of a cell to what surrounds the wall. */
    private void add(int cell, int where, double g, double gT, double gU, double q, double qT, double qU) {
        right[2 * cell] += g;
        right[2 * cell + 1] += q;
        int x = 4 * cell;
        diagonal[x] += gT;
        diagonal[x + 1] += gU;
        diagonal[x + 2] += qT;
        diagonal[x + 3] += qU;
        ledger.enter(cell, where, g, gT, gU, q, qT, qU);
    }

    /** Forward elimination of the block-tridiagonal system; keeps the factors for the error estimate. */
    private void eliminate() {
        double[] a = below;
        double[] b = diagonal;
        double[] c = above;
        double[] m = multiplier;
        double[] v = inverse;
        double v0 = 0;
        double v1 = 0;
        double v2 = 0;
        double v3 = 0;
        for (int i = 0; i < count; i++) {
            int x = 4 * i;
            double b0 = b[x];
            double b1 = b[x + 1];
            double b2 = b[x + 2];
            double b3 = b[x + 3];
            if (i > 0) {
                double a0 = a[x];
                double a1 = a[x + 1];
                double a2 = a[x + 2];
                double a3 = a[x + 3];
                double m0 = a0 * v0 + a1 * v2;
                double m1 = a0 * v1 + a1 * v3;
                double m2 = a2 * v0 + a3 * v2;
                double m3 = a2 * v1 + a3 * v3;
                double c0 = c[x - 4];
                double c1 = c[x - 3];
                double c2 = c[x - 2];
                double c3 = c[x - 1];
                b0 -= m0 * c0 + m1 * c2;
                b1 -= m0 * c1 + m1 * c3;
                b2 -= m2 * c0 + m3 * c2;
                b3 -= m2 * c1 + m3 * c3;
                m[x] = m0;
                m[x + 1] = m1;
                m[x + 2] = m2;
                m[x + 3] = m3;
            }
            double det = 1 / (b0 * b3 - b1 * b2);
            v0 = b3 * det;
            v1 = -b1 * det;
            v2 = -b2 * det;
            v3 = b0 * det;
            v[x] = v0;
            v[x + 1] = v1;
            v[x + 2] = v2;
            v[x + 3] = v3;
        }
    }

    /** Solves with the factors of {@link #eliminate}; the answer replaces the right-hand side. */
    private void substitute(double[] r) {
        double[] m = multiplier;
        double[] v = inverse;
        double[] c = above;
        double p = r[0];
        double q = r[1];
        for (int i = 1; i < count; i++) {
            int x = 4 * i;
            double np = r[2 * i] - (m[x] * p + m[x + 1] * q);
            double nq = r[2 * i + 1] - (m[x + 2] * p + m[x + 3] * q);
            r[2 * i] = np;
            r[2 * i + 1] = nq;
            p = np;
            q = nq;
        }
        p = 0;
        q = 0;
        for (int i = count - 1; i >= 0; i--) {
            int x = 4 * i;
            double y = r[2 * i];
            double z = r[2 * i + 1];
            if (i < count - 1) {
                y -= c[x] * p + c[x + 1] * q;
                z -= c[x + 2] * p + c[x + 3] * q;
            }
            p = v[x] * y + v[x + 1] * z;
            q = v[x + 2] * y + v[x + 3] * z;
            r[2 * i] = p;
            r[2 * i + 1] = q;
        }
    }

    /** Takes the solved change; answers its size in kelvin, or a great number where it had to be shortened. */
    private double update() {
        double[] r = right;
        double[] u = cells.coordinate;
        double[] t = cells.temperatureC;
        double[] slope = cells.waterSlope;
        for (int i = 0; i < count; i++) {
            target[i] = u[i] - r[2 * i + 1];
        }
        boolean shortened = false;
        for (WallModel.Run run : model.runs) {
            shortened |= run.properties().limit(u, target, run.from(), run.to());
        }
        double most = 0;
        int at = 0;
        for (int i = 0; i < count; i++) {
            double change = Math.abs(r[2 * i + 1]);
            double size =
                    Math.max(Math.abs(r[2 * i]), change * Math.max(coordinateWeight[i], waterWeight[i] * slope[i]));
            if (!(size <= most)) {
                most = size;
                at = i;
            }
            double cooler = r[2 * i];
            if (!(Math.abs(cooler) <= LONGEST_CHANGE_K)) {
                cooler = Math.copySign(LONGEST_CHANGE_K, cooler);
                shortened = true;
            }
            t[i] -= cooler;
            u[i] = target[i];
        }
        worstCell = at;
        if (Double.isNaN(most)) {
            return Double.NaN;
        }
        return shortened ? Math.max(most, 1) : most;
    }

    /** After the last iteration: water and flows of the linear system that was solved, which balance exactly. */
    private void closeStage(double[] baseT, double[] layerFlows) {
        double[] r = right;
        double heat = 0;
        for (int i = 0; i < count; i++) {
            double dT = r[2 * i];
            double dU = r[2 * i + 1];
            double carried = cells.waterSlope[i] * dU;
            stageWater[i] = cells.water[i] - carried;
            double capacity = cells.dryHeatCapacity[i] + WATER_HEAT_CAPACITY_J_PER_KG_K * cells.water[i];
            double rise = cells.temperatureC[i] + dT - baseT[i];
            heat += model.width[i] * (capacity * (rise - dT) - WATER_HEAT_CAPACITY_J_PER_KG_K * carried * rise);
        }
        stageHeat = heat;
        ledger.linearise(right);
        int layers = layerFlows.length - 1;
        for (int l = 0; l < layers; l++) {
            int j = model.layerFrom[l];
            layerFlows[l] = j == 0
                    ? -ledger.stageWaterOut(Ledger.INSIDE)
                    : j == count
                            ? ledger.stageWaterOut(Ledger.OUTSIDE) + ledger.stageWaterOut(Ledger.RAIN)
                            : flowInto(j);
        }
        layerFlows[layers] = ledger.stageWaterOut(Ledger.OUTSIDE) + ledger.stageWaterOut(Ledger.RAIN);
    }

    private double flowInto(int j) {
        int x = 4 * j;
        int i = j - 1;
        double[] r = right;
        return flow[i]
                + below[x] * r[2 * i]
                + below[x + 1] * r[2 * i + 1]
                - above[x - 4] * r[2 * j]
                - above[x - 3] * r[2 * j + 1];
    }

    /**
     * The difference to the first-order method with the same stages, damped by the factors of the last stage so that
     * stiff parts do not exaggerate it (Hairer and Wanner 1996, Solving ordinary differential equations II, IV.8).
     */
    private void estimateError(double stageS) {
        double[] e = estimate;
        for (int i = 0; i < count; i++) {
            double w = model.width[i] / stageS;
            double capacity = cells.dryHeatCapacity[i] + WATER_HEAT_CAPACITY_J_PER_KG_K * cells.water[i];
            e[2 * i] = w * ((stageWater[i] - baseWater[i]) - (firstWater[i] - startWater[i]));
            e[2 * i + 1] = w
                    * capacity
                    * ((cells.temperatureC[i] - baseTemperature[i]) - (firstTemperature[i] - startTemperature[i]));
        }
        substitute(e);
        double most = 0;
        int at = 0;
        for (int i = 0; i < count; i++) {
            double u = Math.abs(e[2 * i + 1]);
            double size = Math.max(
                    Math.abs(e[2 * i]),
                    u * Math.max(FULL_SCALE_K * cells.humiditySlope[i], waterWeight[i] * cells.waterSlope[i]));
            if (!(size <= most)) {
                most = size;
                at = i;
            }
        }
        stepErrorK = most;
        worstCell = at;
    }
}
