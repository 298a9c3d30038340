package oakum.physics.mould;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** The mould index of a surface in a climate that a person can type: constant, or a few steps that repeat. */
public final class MouldIndex {
    private static final double HOURS_PER_DAY = 24;
    private static final int DAYS_PER_WEEK = 7;
    private static final double LONG_STEP_D = 7;
    private static final double UNTESTED_DECLINE = 0.1;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "mould-index", "1.0", "Mould index of a surface", Input.class, Result.class)
            .purpose(
                    "Says whether, when and how much mould grows on a surface in a climate of a few steps, and holds it"
                            + " against both forms of the design criterion.")
            .equation(
                    "RHcrit = max(RHmin, −0.00267 T³ + 0.160 T² − 3.13 T + 100) up to 20 °C, RHmin above",
                    Citations.CLASSES)
            .equation("tm = exp(−0.68 ln T − 13.9 ln RH + 0.14 W − 0.33 SQ + 66.02) weeks", Citations.PINE)
            .equation("tv = exp(−0.74 ln T − 12.72 ln RH + 0.06 W + 61.50) weeks", Citations.PINE)
            .equation("dM/dt = k1 k2/(7 tm) per day, k2 = max(1 − exp(2.3 (M − Mmax)), 0)", Citations.PINE)
            .equation("Mmax = A + B x − C x², x = (RHcrit − RH)/(RHcrit − 100)", Citations.CLASSES)
            .equation(
                    "dM/dt = −0.032 Cmat per day in the first 6 h that are unfavourable, 0 to 24 h, −0.016 Cmat after",
                    Citations.PINE)
            .source(Citations.PINE)
            .source(Citations.CLASSES)
            .source(Citations.DECLINE)
            .source(Citations.CRITERION_2009)
            .source(Citations.CRITERION_2016)
            .caution(Cautions.MOULD)
            .validation("The times to index 1 and 3 of the model of 1999 come back from its own growth; courses of two"
                    + " surfaces and the decline computed a second time by independent code.")
            .by(MouldIndex::compute);

    private MouldIndex() {}

    /** A surface and its climate. */
    public record Input(
            @Entry(label = "Surface") MouldSurface surface,

            @Quantity(
                    label = "Decline against pine",
                    symbol = "Cmat",
                    unit = Unit.ONE,
                    min = 0,
                    max = 1,
                    limitSource = "a share of the decline of pine",
                    help = "1 strong, 0.5 significant, 0.25 relatively low, 0.1 almost none. 0.1 where untested.")
            double declineFactor,

            @Entry(label = "At or below 0 °C the index") BelowFreezingMould belowFreezing,

            @Quantity(
                    label = "Index at the start",
                    symbol = "M0",
                    unit = Unit.ONE,
                    min = 0,
                    max = 6,
                    limitSource = "the index runs from 0 to 6")
            double startIndex,

            @Entry(label = "Climate, step by step", minRows = 1, maxRows = 400)
            List<ClimateStep> steps,

            @Quantity(
                    label = "The steps follow each other so often",
                    unit = Unit.COUNT,
                    min = 1,
                    max = 3660,
                    limitSource = Citations.PLAUSIBLE)
            int repeatCount) {}

    /** What one step allows. */
    public record StepResult(
            @Quantity(
                    label = "Mould grows from a humidity of",
                    symbol = "RHcrit",
                    unit = Unit.FRACTION,
                    step = 0.0001,
                    help = "Absent where the temperature lets nothing grow.")
            @Nullable
            Double criticalHumidityFraction,

            @Quantity(
                    label = "Index that a climate which stays approaches",
                    symbol = "Mmax",
                    unit = Unit.ONE,
                    step = 0.001)
            double greatestIndex) {}

    /** What comes of it. */
    public record Result(
            @Quantity(label = "Greatest mould index", symbol = "M", unit = Unit.ONE, step = 0.01, leading = true)
            double greatestIndex,

            @Quantity(label = "Reached after", unit = Unit.DAY, step = 0.1)
            double greatestAtD,

            @Quantity(label = "Mould index at the end", unit = Unit.ONE, step = 0.001, leading = true)
            double endIndex,

            @Quantity(label = "First growth, index 1, after", unit = Unit.DAY, step = 0.1) @Nullable
            Double firstGrowthAtD,

            @Quantity(label = "Seen by the eye, index 3, after", unit = Unit.DAY, step = 0.1) @Nullable
            Double visibleAtD,

            @Quantity(label = "Time in which mould can grow", unit = Unit.DAY, step = 0.1)
            double favourableD,

            @Entry(label = "Below index 3 (form of 2016)") Verdict indexCriterion,

            @Entry(label = "Below index 3 with one index step of uncertainty")
            Verdict indexWithUncertainty,

            @Quantity(label = "Greatest 30-day mean humidity at 5 to 40 °C", unit = Unit.FRACTION, step = 0.001)
            @Nullable
            Double thirtyDayHumidityFraction,

            @Entry(label = "30-day mean humidity below 80 % (form of 2009)")
            Verdict thirtyDayCriterion,

            @Entry(label = "What each step allows") List<StepResult> steps,

            @Quantity(label = "Index at the end of each week", unit = Unit.ONE, step = 0.001)
            List<Double> weeklyIndex,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        MouldGrowth growth =
                new MouldGrowth(input.surface(), input.declineFactor(), input.belowFreezing(), input.startIndex());
        ThirtyDayHumidity thirtyDays = new ThirtyDayHumidity();
        ClimateStep.walk(input.steps(), input.repeatCount(), (endH, step) -> {
            growth.add(endH, step.temperatureC(), step.relativeHumidityFraction());
            thirtyDays.add(endH, step.temperatureC(), step.relativeHumidityFraction());
        });
        return new Result(
                growth.greatest(),
                growth.greatestAtHours() / HOURS_PER_DAY,
                growth.index(),
                days(growth.firstGrowthAtHours()),
                days(growth.visibleAtHours()),
                growth.favourableHours() / HOURS_PER_DAY,
                growth.greatest() < MouldGrowth.VISIBLE ? Verdict.PASSES : Verdict.FAILS,
                Verdict.atMost(growth.greatest(), MouldGrowth.UNCERTAINTY, MouldGrowth.VISIBLE),
                thirtyDays.greatest(),
                thirtyDays.verdict(),
                input.steps().stream()
                        .map(step -> stepResult(input.surface(), step))
                        .toList(),
                weekly(growth.byDay()),
                notices(input));
    }

    private static @Nullable Double days(@Nullable Double hours) {
        return hours == null ? null : (Double) (hours / HOURS_PER_DAY);
    }

    private static StepResult stepResult(MouldSurface surface, ClimateStep step) {
        double temperatureC = step.temperatureC();
        boolean grows = temperatureC > 0 && temperatureC < MouldSurface.TOO_WARM_C;
        return new StepResult(
                grows ? (Double) surface.criticalHumidityFraction(temperatureC) : null,
                surface.greatestIndex(temperatureC, step.relativeHumidityFraction()));
    }

    private static List<Double> weekly(double[] byDay) {
        List<Double> weeks = new ArrayList<>();
        for (int day = DAYS_PER_WEEK - 1; day < byDay.length; day += DAYS_PER_WEEK) {
            weeks.add(byDay[day]);
        }
        return List.copyOf(weeks);
    }

    private static List<Notice> notices(Input input) {
        List<Notice> said = new ArrayList<>();
        if (input.declineFactor() > UNTESTED_DECLINE) {
            said.add(Notice.note(
                    "decline-above-untested",
                    "declineFactor",
                    String.format(
                            Locale.ROOT,
                            "A decline of %.2f of that of pine needs a test of the material; untested materials are"
                                    + " computed with 0.1.",
                            input.declineFactor()),
                    Citations.CRITERION_2016));
        }
        if (input.steps().stream().anyMatch(step -> step.durationD() > LONG_STEP_D)) {
            said.add(Notice.advice(
                    "long-mean",
                    "steps",
                    "A mean over weeks hides the humid hours that make mould grow; judge a real surface from hourly"
                            + " values.",
                    Citations.PROPOSED));
        }
        return List.copyOf(said);
    }
}
