package oakum.physics.hygrothermal;

import static oakum.physics.hygrothermal.Constants.SECONDS_PER_HOUR;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Computes heat and moisture in a wall over hours to years (EN 15026: coupled transfer in one dimension). What it
 * leaves out: convection through cracks unless told as a source, flow in two or three dimensions, salts, chemistry,
 * freezing of pore water.
 */
public final class HygrothermalRun {
    private static final double SHORTEST_STEP_S = 1e-3;

    /** A jump at a face is not resolved finer than this; the method damps what is left of it. */
    private static final double SHORTEST_FOR_ERROR_S = 0.1;

    private static final int HOURS_PER_DAY = 24;

    /** A step may be doubled when its error, four times as great in a doubled one, would still be allowed. */
    private static final double LONGER_BELOW = 0.25;

    /** After an iteration failed, steps to take before a longer one is tried again. */
    private static final int STEPS_BEFORE_LONGER = 4;

    private final Wall wall;
    private final Climate climate;
    private final RunPlan plan;
    private final WallModel model;

    private HygrothermalRun(Wall wall, Climate climate, RunPlan plan, WallModel model) {
        this.wall = wall;
        this.climate = climate;
        this.plan = plan;
        this.model = model;
    }

    /**
     * Prepares a run.
     *
     * @throws oakum.physics.calculation.Refused for a wall, climate or plan without meaning, naming layer and value
     */
    public static HygrothermalRun of(Wall wall, Climate climate, RunPlan plan) {
        InputCheck.check(wall, climate, plan);
        return new HygrothermalRun(wall, climate, plan, new WallModel(wall, plan.grid()));
    }

    /**
     * Prepares a run on a grid of one's own.
     *
     * @param cellWidthsM one array a layer, widths from inside to outside; empty for a membrane, one for air
     * @throws oakum.physics.calculation.Refused as {@link #of}, and where widths do not sum to the layer's thickness
     */
    public static HygrothermalRun onGrid(Wall wall, Climate climate, RunPlan plan, List<double[]> cellWidthsM) {
        InputCheck.check(wall, climate, plan);
        InputCheck.checkGrid(wall, cellWidthsM);
        return new HygrothermalRun(wall, climate, plan, new WallModel(wall, cellWidthsM));
    }

    /** Goes through the hours; may be called again and starts anew each time. */
    public RunResult run(HourSink sink, RunControl control) {
        return new Pass(sink, control).go();
    }

    /** One way through the hours. */
    private final class Pass {
        private final HourSink sink;
        private final RunControl control;
        private final WallSolver solver = new WallSolver(model, climate, plan.newtonK());
        private final Collector collector;
        private final CellView view;
        private long steps;
        private long halvedForError;
        private long halvedForIteration;
        private double largestErrorK;
        private double shortestStepS = Double.POSITIVE_INFINITY;
        private double wishedS = plan.baseStepS();
        private int steady;
        private RunResult.@Nullable Stop stop;

        Pass(HourSink sink, RunControl control) {
            this.sink = sink;
            this.control = control;
            solver.start(plan.initialTemperatureC());
            view = new CellView(wall, model, solver, climate);
            collector = new Collector(wall, model, solver, view, plan);
        }

        RunResult go() {
            RunResult.Outcome outcome = RunResult.Outcome.FINISHED;
            int done = 0;
            while (done < plan.hours()) {
                if (!hour(done)) {
                    outcome = RunResult.Outcome.NOT_CONVERGED;
                    break;
                }
                done++;
                view.endOfHour(done);
                collector.endOfHour(done);
                sink.accept(view);
                if (done % HOURS_PER_DAY == 0 && !control.goOn(done, plan.hours()) && done < plan.hours()) {
                    outcome = RunResult.Outcome.CANCELLED;
                    break;
                }
            }
            return collector.result(
                    outcome,
                    stop,
                    done,
                    new RunResult.Statistics(
                            model.count,
                            steps,
                            halvedForError,
                            halvedForIteration,
                            solver.iterations,
                            largestErrorK,
                            shortestStepS));
        }

        private boolean hour(int hour) {
            double at = 0;
            while (at < SECONDS_PER_HOUR) {
                double left = SECONDS_PER_HOUR - at;
                double parts = Math.ceil(left / Math.min(wishedS, left) - 1e-9);
                double length = left / parts;
                boolean converged = solver.tryStep(hour, at, length);
                if (!converged || (solver.stepErrorK > plan.errorK() && length > SHORTEST_FOR_ERROR_S)) {
                    if (converged) {
                        halvedForError++;
                    } else {
                        halvedForIteration++;
                        steady = STEPS_BEFORE_LONGER;
                    }
                    wishedS = 0.5 * length;
                    if (wishedS < SHORTEST_STEP_S) {
                        stop = stopAt(hour + at / SECONDS_PER_HOUR);
                        return false;
                    }
                    continue;
                }
                solver.keep(length);
                steps++;
                largestErrorK = Math.max(largestErrorK, solver.stepErrorK);
                shortestStepS = Math.min(shortestStepS, length);
                at = parts == 1 ? SECONDS_PER_HOUR : at + length;
                steady--;
                wishedS = steady < 0 && solver.stepErrorK < LONGER_BELOW * plan.errorK()
                        ? Math.min(plan.baseStepS(), 2 * length)
                        : Math.max(length, wishedS);
            }
            return true;
        }

        private RunResult.Stop stopAt(double hour) {
            int cell = solver.worstCell;
            return new RunResult.Stop(
                    wall.layers().get(model.layerOfCell[cell]).name(),
                    model.depthInLayerM(cell),
                    hour,
                    "The iteration did not converge even with steps of " + SHORTEST_STEP_S + " s.");
        }
    }
}
