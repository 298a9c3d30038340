package oakum.physics.hygrothermal;

import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import org.jspecify.annotations.Nullable;

/**
 * Years of heat and moisture in a wall, a roof or a floor, from its layers, the weather and the air inside (EN 15026).
 * What the solver does stands in {@link HygrothermalRun}; here the house's words become its input and its hours become
 * answers.
 */
public final class WallMoisture {
    private static final Source EN_15026 = Source.fromMemory("EN 15026:2007, clauses 4 and 5");

    /** The declared calculation; runs from one to several seconds. */
    public static final Calculation<WallMoistureInput, WallMoistureResult> CALCULATION = Calculation.declare(
                    "wall-moisture",
                    "1.0",
                    "Moisture of a wall over years",
                    WallMoistureInput.class,
                    WallMoistureResult.class)
            .purpose(
                    "Says whether the wall dries, how wet each layer gets and when, and whether mould or rot can start.")
            .equation("(ρ c + c_w w) ∂θ/∂t = ∂/∂x(λ ∂θ/∂x) − ∂(h_v g_v)/∂x", EN_15026)
            .equation("∂w/∂t = −∂(g_v + g_l)/∂x", EN_15026)
            .equation("g_v = −δ ∂p_v/∂x", EN_15026)
            .equation(
                    "g_l = −D_w ∂w/∂x",
                    Source.fromMemory("Künzel 1995: liquid transport by a diffusivity of the water content"))
            .equation("θ_eq = θ_e + (α I − ε F ΔR)/h_e", Source.fromMemory("EN 15026: equivalent outdoor temperature"))
            .source(EN_15026)
            .source(Source.fromMemory("ANSI/ASHRAE 160: rain behind the cladding, mould index below 3"))
            .source(Source.seen("mould model with sensitivity classes (2010), in two open implementations"))
            .caution(new Caution(
                    "Mould",
                    "The mould index tells visible growth on hidden faces and is good to one step; it says nothing of"
                            + " health. Where mould is found, have it judged and removed by people trained for it."))
            .caution(new Caution(
                    "Structure",
                    "Where wood stays wet, its strength has to be judged by a licensed engineer before work goes on."))
            .validation("The solver is held against EN 15026 Annex A and the HAMSTAD cases; measured walls stand in the"
                    + " docs. The material figures of the library are mostly of the order of published values: good to"
                    + " compare variants, to be replaced by tested ones before advice is given.")
            .by(input -> run(input, RunControl.NONE).resultOrRefuse());

    private WallMoisture() {}

    /**
     * A run with what a drawing needs. Of an unfinished one everything holds up to where it ended and no farther.
     *
     * @param solved how the solver ended
     * @param result as far as it got
     */
    public record Run(RunResult solved, WallMoistureResult result, WallTape tape) {
        /**
         * The result of a finished run.
         *
         * @throws Refused where the run did not converge, naming layer, depth and time
         */
        public WallMoistureResult resultOrRefuse() {
            RunResult.Stop stop = solved.stop();
            if (stop != null) {
                throw Refused.of("layers", stop.layer(), sentence(stop, tape), WallCase.ASSUMED);
            }
            return result;
        }

        /** Where and when the run could not go on; null where it could. */
        public @Nullable String whyNotFinished() {
            RunResult.Stop stop = solved.stop();
            return stop == null ? null : sentence(stop, tape);
        }

        private static String sentence(RunResult.Stop stop, WallTape tape) {
            return String.format(
                    Locale.ROOT,
                    "No step converged in layer \"%s\", %.1f mm from its inner face, on %s. %s",
                    stop.layer(),
                    1000 * stop.depthM(),
                    WallJudge.day(tape.firstDay(), (int) stop.hour()),
                    stop.why());
        }
    }

    /**
     * Runs and tells how far it is.
     *
     * @throws Refused for a wall, weather or room without meaning, naming the field
     */
    public static Run run(WallMoistureInput input, RunControl control) {
        Limits.require(input);
        WallCase made = new WallCase(input);
        WallJudge judge = new WallJudge(made);
        RunResult solved =
                HygrothermalRun.of(made.wall, made.climate, made.plan()).run(judge, control);
        return new Run(solved, judge.result(solved), judge.tape(solved));
    }
}
