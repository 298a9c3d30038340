package oakum.physics.hygrothermal;

import java.util.Arrays;

/**
 * The accounts of a run: every flow between the wall and what surrounds it, entered where the linear system is
 * assembled and closed with that system's solution, so that what is booked is what was solved.
 */
final class Ledger {
    static final int INSIDE = 0;
    static final int OUTSIDE = 1;
    static final int RAIN = 2;
    static final int RAIN_INSIDE = 3;
    static final int AIR_LEAK = 4;
    static final int CAVITY = 5;
    private static final int PLACES = 6;

    private int entries;
    private int[] cell = new int[16];
    private int[] place = new int[16];
    private double[] values = new double[16 * 6];

    private final double[] stageWater = new double[PLACES];
    private final double[] stageHeat = new double[PLACES];
    private final double[] stepWater = new double[PLACES];
    private final double[] stepHeat = new double[PLACES];
    private double stepStored;
    private double stepRain;

    private final double[] waterOut = new double[PLACES];
    private final double[] heatOut = new double[PLACES];
    private double waterIn;
    private double waterGone;
    private double heatIn;
    private double heatGone;
    private double heatStored;
    private double rain;

    void beginAssembly() {
        entries = 0;
    }

    void enter(int atCell, int atPlace, double g, double gT, double gU, double q, double qT, double qU) {
        if (entries == cell.length) {
            cell = Arrays.copyOf(cell, 2 * entries);
            place = Arrays.copyOf(place, 2 * entries);
            values = Arrays.copyOf(values, 12 * entries);
        }
        cell[entries] = atCell;
        place[entries] = atPlace;
        int v = 6 * entries;
        values[v] = g;
        values[v + 1] = gT;
        values[v + 2] = gU;
        values[v + 3] = q;
        values[v + 4] = qT;
        values[v + 5] = qU;
        entries++;
    }

    /** Moves the entries of the last assembly to the solution of its system. */
    void linearise(double[] change) {
        Arrays.fill(stageWater, 0);
        Arrays.fill(stageHeat, 0);
        for (int k = 0; k < entries; k++) {
            double dT = change[2 * cell[k]];
            double dU = change[2 * cell[k] + 1];
            int v = 6 * k;
            stageWater[place[k]] += values[v] - values[v + 1] * dT - values[v + 2] * dU;
            stageHeat[place[k]] += values[v + 3] - values[v + 4] * dT - values[v + 5] * dU;
        }
    }

    /** Moisture out of the wall at a place during the stage just closed, kg/(m² s). */
    double stageWaterOut(int atPlace) {
        return stageWater[atPlace];
    }

    void beginStep() {
        Arrays.fill(stepWater, 0);
        Arrays.fill(stepHeat, 0);
        stepStored = 0;
        stepRain = 0;
    }

    void closeStage(double weightS, double storedJPerM2, double rainKgPerM2S) {
        for (int p = 0; p < PLACES; p++) {
            stepWater[p] += weightS * stageWater[p];
            stepHeat[p] += weightS * stageHeat[p];
        }
        stepStored += storedJPerM2;
        stepRain += weightS * rainKgPerM2S;
    }

    void keepStep() {
        for (int p = 0; p < PLACES; p++) {
            waterOut[p] += stepWater[p];
            heatOut[p] += stepHeat[p];
            waterIn += Math.max(0, -stepWater[p]);
            waterGone += Math.max(0, stepWater[p]);
            heatIn += Math.max(0, -stepHeat[p]);
            heatGone += Math.max(0, stepHeat[p]);
        }
        heatStored += stepStored;
        rain += stepRain;
    }

    /** Moisture that has left the wall at a place so far, kg/m². */
    double waterOut(int atPlace) {
        return waterOut[atPlace];
    }

    /** Heat that has left the wall at a place so far, J/m². */
    double heatOut(int atPlace) {
        return heatOut[atPlace];
    }

    double runOffKgPerM2() {
        return rain + waterOut[RAIN] + waterOut[RAIN_INSIDE];
    }

    RunResult.Balance balance(double waterStored) {
        return new RunResult.Balance(
                waterIn,
                waterGone,
                waterStored,
                part(waterIn - waterGone - waterStored, waterIn + waterGone),
                heatIn,
                heatGone,
                heatStored,
                part(heatIn - heatGone - heatStored, heatIn + heatGone));
    }

    private static double part(double error, double throughput) {
        return error == 0 ? 0 : Math.abs(error) / throughput;
    }
}
