package oakum.physics.hygrothermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** Gathers the result of a run hour by hour. */
final class Collector {
    private static final int HOURS_PER_DAY = 24;
    private static final int HOURS_PER_YEAR = 8760;
    private static final double BALANCED_SHARE = 0.01;
    private static final double FROST_HUMIDITY = 0.95;
    private static final double OVERFULL = 1.0001;

    private final Wall wall;
    private final WallModel model;
    private final WallSolver solver;
    private final CellView view;
    private final RunPlan plan;
    private final int layers;
    private final double startWater;
    private final double[] startOfLayer;
    private final double[] dryMass;
    private final double[] peak;
    private final int[] peakHour;
    private final double[] worstPeak;
    private final int[] worstPeakHour;
    private final double[] yearEnd;
    private final double[] flowAtYearStart;
    private final double[] flowOfLastYear;
    private final double[] dayWorst;
    private final double[] dayTemperature;
    private final double[] dayHumidity;
    private final double[] saturated;
    private final List<RunResult.Day> days = new ArrayList<>();
    private final List<RunResult.Profile> profiles = new ArrayList<>();
    private @Nullable Integer yearsToBalance;
    private boolean wholeYear;
    private int frostHours;
    private int overfullHours;

    Collector(Wall wall, WallModel model, WallSolver solver, CellView view, RunPlan plan) {
        this.wall = wall;
        this.model = model;
        this.solver = solver;
        this.view = view;
        this.plan = plan;
        layers = wall.layers().size();
        startWater = solver.waterKgPerM2();
        startOfLayer = new double[layers];
        dryMass = new double[layers];
        peak = new double[layers];
        peakHour = new int[layers];
        worstPeak = new double[layers];
        worstPeakHour = new int[layers];
        yearEnd = new double[layers];
        flowAtYearStart = new double[layers + 1];
        flowOfLastYear = new double[layers + 1];
        dayWorst = new double[layers];
        dayTemperature = new double[view.planes()];
        dayHumidity = new double[view.planes()];
        saturated = new double[layers];
        for (int l = 0; l < layers; l++) {
            startOfLayer[l] = view.layerWaterKgPerM2(l);
            yearEnd[l] = startOfLayer[l];
            if (wall.layers().get(l) instanceof SolidLayer solid) {
                dryMass[l] = solid.densityKgPerM3();
                saturated[l] = OVERFULL * solid.properties().saturationKgPerM3();
            }
            peak[l] = view.layerWaterKgPerM3(l);
            worstPeak[l] = view.layerWorstWaterKgPerM3(l);
        }
        if (plan.profileHours().contains(0)) {
            profiles.add(profile(0));
        }
    }

    void endOfHour(int hour) {
        for (int l = 0; l < layers; l++) {
            if (dryMass[l] == 0) {
                continue;
            }
            double mean = view.layerWaterKgPerM3(l);
            double worst = view.layerWorstWaterKgPerM3(l);
            if (mean > peak[l]) {
                peak[l] = mean;
                peakHour[l] = hour;
            }
            if (worst > worstPeak[l]) {
                worstPeak[l] = worst;
                worstPeakHour[l] = hour;
            }
            dayWorst[l] = Math.max(dayWorst[l], worst);
        }
        for (int p = 0; p < dayTemperature.length; p++) {
            dayTemperature[p] += view.planeTemperatureC(p) / HOURS_PER_DAY;
            dayHumidity[p] += view.planeHumidity(p) / HOURS_PER_DAY;
        }
        countCells();
        if (plan.profileHours().contains(hour)) {
            profiles.add(profile(hour));
        }
        if (hour % HOURS_PER_DAY == 0) {
            endOfDay(hour / HOURS_PER_DAY - 1);
        }
        if (hour % HOURS_PER_YEAR == 0) {
            endOfYear(hour / HOURS_PER_YEAR);
        }
    }

    private void countCells() {
        boolean frost = false;
        boolean overfull = false;
        for (WallModel.Run run : model.runs) {
            if (dryMass[run.layer()] == 0) {
                continue;
            }
            for (int i = run.from(); i < run.to(); i++) {
                overfull |= solver.startWater[i] > saturated[run.layer()];
                frost |= solver.startTemperature[i] < 0
                        && run.properties().relativeHumidity(solver.startCoordinate[i]) >= FROST_HUMIDITY;
            }
        }
        frostHours += frost ? 1 : 0;
        overfullHours += overfull ? 1 : 0;
    }

    private void endOfDay(int day) {
        List<Double> mean = new ArrayList<>(layers);
        List<Double> worst = new ArrayList<>(layers);
        for (int l = 0; l < layers; l++) {
            mean.add(massPercent(l, view.layerWaterKgPerM3(l)));
            worst.add(massPercent(l, dayWorst[l]));
        }
        days.add(new RunResult.Day(day, mean, worst, boxed(dayTemperature), boxed(dayHumidity)));
        Arrays.fill(dayWorst, 0);
        Arrays.fill(dayTemperature, 0);
        Arrays.fill(dayHumidity, 0);
    }

    private void endOfYear(int year) {
        boolean balanced = true;
        for (int l = 0; l < layers; l++) {
            double now = view.layerWaterKgPerM2(l);
            if (dryMass[l] != 0) {
                balanced &= Math.abs(now - yearEnd[l]) <= BALANCED_SHARE * now;
            }
            yearEnd[l] = now;
        }
        if (balanced && yearsToBalance == null) {
            yearsToBalance = year;
        }
        for (int k = 0; k <= layers; k++) {
            flowOfLastYear[k] = solver.layerFlow[k] - flowAtYearStart[k];
            flowAtYearStart[k] = solver.layerFlow[k];
        }
        wholeYear = true;
    }

    RunResult result(
            RunResult.Outcome outcome, RunResult.@Nullable Stop stop, int hoursDone, RunResult.Statistics statistics) {
        double[] flow = wholeYear ? flowOfLastYear : solver.layerFlow;
        List<RunResult.LayerResult> found = new ArrayList<>(layers);
        for (int l = 0; l < layers; l++) {
            found.add(new RunResult.LayerResult(
                    wall.layers().get(l).name(),
                    startOfLayer[l],
                    view.layerWaterKgPerM2(l),
                    massPercent(l, view.layerWaterKgPerM3(l)),
                    massPercent(l, peak[l]),
                    peakHour[l],
                    massPercent(l, worstPeak[l]),
                    worstPeakHour[l],
                    new RunResult.Drying(-flow[l], flow[l + 1])));
        }
        return new RunResult(
                outcome,
                stop,
                hoursDone,
                found,
                yearsToBalance,
                frostHours,
                overfullHours,
                solver.ledger.runOffKgPerM2(),
                days,
                profiles,
                solver.ledger.balance(solver.waterKgPerM2() - startWater),
                statistics);
    }

    private RunResult.Profile profile(int hour) {
        double[] depth = new double[model.count];
        double[] humidity = new double[model.count];
        double[] pressure = new double[model.count];
        double at = 0;
        for (int i = 0; i < model.count; i++) {
            depth[i] = at + model.half[i];
            at += model.width[i];
            humidity[i] = view.humidity(i);
            pressure[i] = humidity[i] * Iso13788Saturation.pressurePa(solver.startTemperature[i]);
        }
        return new RunResult.Profile(
                hour,
                boxed(depth),
                boxed(solver.startTemperature),
                boxed(humidity),
                boxed(pressure),
                boxed(solver.startWater));
    }

    private double massPercent(int layer, double waterKgPerM3) {
        return dryMass[layer] == 0 ? 0 : 100 * waterKgPerM3 / dryMass[layer];
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
