package oakum.physics.mould;

import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Decay of wood in a climate that a person can type. */
public final class DecayOfWood {
    private static final double HOURS_PER_DAY = 24;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "wood-decay", "1.0", "Decay of wet wood", Input.class, Result.class)
            .purpose(
                    "Estimates when brown rot settles in pine or spruce sapwood that stays above 95 % relative humidity,"
                            + " and how much mass it takes.")
            .equation(
                    "tcrit = (2.3 T + 0.035 RH − 0.024 T RH)/(−42.9 + 0.14 T + 0.45 RH) · 720 h, T above 0 °C, RH above"
                            + " 95 %",
                    Citations.DECAY)
            .equation("dα/dt = 1/tcrit where favourable, −1/17 520 h otherwise, 0 ≤ α ≤ 1", Citations.DECAY)
            .equation("dML/dt = −5.96e-2 + 1.96e-4 T + 6.25e-4 RH % per hour where α = 1", Citations.DECAY)
            .source(Citations.DECAY)
            .caution(Cautions.STRUCTURE)
            .caution(Cautions.MOULD)
            .validation(
                    "No published example was found; computed a second time by independent code. The monthly and the"
                            + " hourly form of the source agree.")
            .by(DecayOfWood::compute);

    private DecayOfWood() {}

    /** A climate within the wood. */
    public record Input(
            @Entry(label = "Climate, step by step", minRows = 1, maxRows = 400)
            List<ClimateStep> steps,

            @Quantity(
                    label = "The steps follow each other so often",
                    unit = Unit.COUNT,
                    min = 1,
                    max = 3660,
                    limitSource = Citations.PLAUSIBLE)
            int repeatCount) {}

    /** What comes of it. */
    public record Result(
            @Quantity(label = "Mass lost", symbol = "ML", unit = Unit.FRACTION, step = 0.0001, leading = true)
            double massLossFraction,

            @Quantity(label = "Activation at the end", symbol = "α", unit = Unit.ONE, step = 0.001)
            double activation,

            @Quantity(label = "Decay runs after", unit = Unit.DAY, step = 0.1) @Nullable
            Double activeAtD,

            @Quantity(label = "Time in which it can settle or run", unit = Unit.DAY, step = 0.1)
            double favourableD) {}

    private static Result compute(Input input) {
        WoodDecay decay = new WoodDecay();
        ClimateStep.walk(
                input.steps(),
                input.repeatCount(),
                (endH, step) -> decay.add(endH, step.temperatureC(), step.relativeHumidityFraction()));
        Double active = decay.activeAtHours();
        return new Result(
                decay.massLossFraction(),
                decay.activation(),
                active == null ? null : (Double) (active / HOURS_PER_DAY),
                decay.favourableHours() / HOURS_PER_DAY);
    }
}
