package oakum.physics.mould;

import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** Judges the moisture of wood over a few stretches of time. */
public final class WoodMoistureCriteria {
    private static final double HOURS_PER_DAY = 24;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "wood-moisture-criteria", "1.0", "Wood moisture over time", Input.class, Result.class)
            .purpose(
                    "Holds the moisture of framing or sheathing over time against 20 %, against a wet spell of 30 days,"
                            + " and against the start of decay.")
            .equation("safe: u ≤ 20 %", Citations.MOISTURE)
            .equation("warned: u > 20 % for more than 30 days above 0 °C in one wet spell", Citations.PERSISTENCE)
            .equation("decay can start: u ≥ 28 % and 5 °C ≤ T ≤ 40 °C", Citations.MOISTURE)
            .source(Citations.MOISTURE)
            .source(Citations.PERSISTENCE)
            .caution(Cautions.STRUCTURE)
            .caution(Cautions.MOULD)
            .validation("The limits are rules; each is crossed from both sides in a test. No published example was"
                    + " found.")
            .by(WoodMoistureCriteria::compute);

    private WoodMoistureCriteria() {}

    /** A stretch of time with one moisture. */
    public record MoistureStep(
            @Quantity(label = "Lasts", unit = Unit.DAY, min = 0.0001, max = 3650, limitSource = Citations.PLAUSIBLE)
            double durationD,

            @Quantity(
                    label = "Temperature of the wood",
                    symbol = "T",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 100,
                    limitSource = Citations.PLAUSIBLE)
            double temperatureC,

            @Quantity(
                    label = "Moisture, water over dry mass",
                    symbol = "u",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 2,
                    limitSource = Citations.PLAUSIBLE)
            double moistureFraction) {}

    /** The history of a piece of wood. */
    public record Input(
            @Entry(label = "Moisture, step by step", minRows = 1, maxRows = 400)
            List<MoistureStep> steps) {}

    /** What it comes to. */
    public record Result(
            @Entry(label = "Judgement") WoodMoistureState state,

            @Quantity(label = "Greatest moisture", unit = Unit.FRACTION, step = 0.001, leading = true)
            double greatestFraction,

            @Quantity(label = "Time above 20 %", unit = Unit.DAY, step = 0.1)
            double aboveLimitD,

            @Quantity(label = "Longest wet spell above freezing", unit = Unit.DAY, step = 0.1, leading = true)
            double longestSpellD,

            @Quantity(label = "Time in which decay can start", unit = Unit.DAY, step = 0.1)
            double decayD) {}

    private static Result compute(Input input) {
        ClimateStep.requireTenYears(
                "steps", input.steps().stream().map(MoistureStep::durationD).toList(), 1);
        WoodMoistureWatch watch = new WoodMoistureWatch();
        double days = 0;
        for (MoistureStep step : input.steps()) {
            days += step.durationD();
            watch.add(HOURS_PER_DAY * days, step.temperatureC(), step.moistureFraction());
        }
        return new Result(
                watch.state(),
                watch.greatest(),
                watch.aboveLimitHours() / HOURS_PER_DAY,
                watch.longestSpellHours() / HOURS_PER_DAY,
                watch.decayHours() / HOURS_PER_DAY);
    }
}
