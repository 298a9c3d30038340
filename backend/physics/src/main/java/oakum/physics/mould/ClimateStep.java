package oakum.physics.mould;

import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;

/** A stretch of time with one climate. */
public record ClimateStep(
        @Quantity(
                label = "Lasts",
                symbol = "t",
                unit = Unit.DAY,
                min = 0.0001,
                max = 3650,
                limitSource = Citations.PLAUSIBLE,
                help = "8 hours are 0.3333 days.")
        double durationD,

        @Quantity(
                label = "Temperature of the surface",
                symbol = "T",
                unit = Unit.CELSIUS,
                min = -60,
                max = 100,
                limitSource = Citations.PLAUSIBLE,
                advisedMin = -40,
                advisedMax = 50,
                advisedSource = "the models grow nothing at or below 0 °C nor from 50 °C on")
        double temperatureC,

        @Quantity(
                label = "Relative humidity at the surface",
                symbol = "RH",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a relative humidity")
        double relativeHumidityFraction) {

    static final double LONGEST_D = 3660;

    /**
     * Refuses what would take longer than ten years.
     *
     * @param field what to shorten
     * @param durationsD of each step
     * @param repeats how often they follow each other
     */
    static void requireTenYears(String field, List<Double> durationsD, int repeats) {
        double total =
                repeats * durationsD.stream().mapToDouble(Double::doubleValue).sum();
        if (total > LONGEST_D) {
            throw Refused.of(
                    field,
                    String.format(Locale.ROOT, "%.0f", total),
                    String.format(
                            Locale.ROOT,
                            "The steps with their repeats last %.0f days; at most %.0f days are computed. Shorten the"
                                    + " steps or repeat them less often.",
                            total,
                            LONGEST_D),
                    Citations.PROPOSED);
        }
    }

    /** Called for each step with the hour of its end. */
    interface Each {
        void step(double endH, ClimateStep step);
    }

    /** Walks through the steps, so often. */
    static void walk(List<ClimateStep> steps, int repeats, Each each) {
        requireTenYears(
                "repeatCount", steps.stream().map(ClimateStep::durationD).toList(), repeats);
        double days = 0;
        for (int i = 0; i < repeats; i++) {
            for (ClimateStep step : steps) {
                days += step.durationD();
                each.step(24 * days, step);
            }
        }
    }
}
