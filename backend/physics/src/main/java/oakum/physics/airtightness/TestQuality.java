package oakum.physics.airtightness;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.airtightness.TightnessTest.Direction;
import oakum.physics.airtightness.TightnessTest.DirectionResult;
import oakum.physics.airtightness.TightnessTest.Input;
import oakum.physics.airtightness.TightnessTest.Point;
import oakum.physics.airtightness.TightnessTest.Standard;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** What speaks against a tightness test: findings that reject it, and advice. */
final class TestQuality {
    private static final double LEAST_EXPONENT = 0.5;
    private static final double GREATEST_EXPONENT = 1;
    private static final double LEAST_R_SQUARED = 0.98;
    private static final int FEWEST_READINGS = 5;
    private static final double GREATEST_BASELINE_PA = 5;
    private static final double BASELINES_BELOW_LOWEST = 5;
    private static final double LEAST_HIGHEST_PA = 50;
    private static final double WIDEST_STEP_PA = 10;
    private static final double LOWEST_PA = 10;
    private static final double USUAL_LOWEST_PA = 15;
    private static final double E779_STACK_KM = 200;
    private static final double ISO_STACK_KM = 250;
    private static final double ISO_WIND_M_PER_S = 6;
    private static final double DIRECTIONS_APART = 0.10;
    private static final double COMBUSTION_PA = 5;

    /** Readings are typed to a tenth of a pascal. */
    private static final double HALF_DIGIT_PA = 0.05;

    private final Input in;
    private final List<Notice> notices = new ArrayList<>();

    private TestQuality(Input in) {
        this.in = in;
    }

    static List<Notice> findings(Input in, @Nullable DirectionResult out, @Nullable DirectionResult inward) {
        TestQuality quality = new TestQuality(in);
        if (in.depressurisation() != null && out != null) {
            quality.ofDirection("Depressurisation", "depressuris", in.depressurisation(), out);
        }
        if (in.pressurisation() != null && inward != null) {
            quality.ofDirection("Pressurisation", "pressuris", in.pressurisation(), inward);
        }
        quality.ofTwoDirections(out, inward);
        quality.ofWeather();
        quality.ofInstrumentsAndAir();
        quality.ofCombustion(out, inward);
        return List.copyOf(quality.notices);
    }

    private void ofDirection(String name, String stem, Direction given, DirectionResult result) {
        String readings = stem + "ation.readings";
        double lowest = result.points().stream()
                .mapToDouble(Point::inducedPressurePa)
                .min()
                .orElseThrow();
        double highest = result.points().stream()
                .mapToDouble(Point::inducedPressurePa)
                .max()
                .orElseThrow();
        double baseline = given.greatestBaselinePa();
        if (baseline > GREATEST_BASELINE_PA) {
            reject(
                    "baseline-too-large",
                    stem + "ation.baselineBeforePa",
                    TightnessTest.ISO,
                    "%s: the baseline reaches %.1f Pa; above %.0f Pa the test does not count.",
                    name,
                    baseline,
                    GREATEST_BASELINE_PA);
        }
        if (lowest < BASELINES_BELOW_LOWEST * baseline) {
            reject(
                    "lowest-too-near-baseline",
                    readings,
                    TightnessTest.ISO,
                    "%s: the lowest pressure %.1f Pa is below five times the baseline of %.1f Pa.",
                    name,
                    lowest,
                    baseline);
        }
        if (in.standard() == Standard.SINGLE_POINT) {
            advise(
                    "single-point",
                    readings,
                    TightnessTest.PRACTICE,
                    "%s: single point, exponent %.2f assumed, read between %.1f and %.1f Pa. It is no test after ASTM"
                            + " E779 or ISO 9972, and its uncertainty leaves out that of the exponent.",
                    name,
                    result.exponent(),
                    lowest,
                    highest);
            return;
        }
        ofRange(name, readings, result, lowest, highest);
        if (!(result.exponent() >= LEAST_EXPONENT && result.exponent() <= GREATEST_EXPONENT)) {
            reject(
                    "exponent-outside",
                    stem + "ed.exponent",
                    TightnessTest.ISO,
                    "%s: the exponent %.3f is outside 0.5 to 1, so the house or the reading changed during the test.",
                    name,
                    result.exponent());
        }
        Double rSquared = result.rSquared();
        if (rSquared != null && rSquared < LEAST_R_SQUARED) {
            reject(
                    "poor-fit",
                    stem + "ed.rSquared",
                    TightnessTest.ISO,
                    "%s: r² is %.4f; below 0.98 the readings do not lie on one line.",
                    name,
                    rSquared);
        }
    }

    private void ofRange(String name, String readings, DirectionResult result, double lowest, double highest) {
        int count = result.points().size();
        if (count < FEWEST_READINGS) {
            reject(
                    "too-few-readings",
                    readings,
                    TightnessTest.E779,
                    "%s: %d readings; at least %d are needed.",
                    name,
                    count,
                    FEWEST_READINGS);
        }
        if (highest < LEAST_HIGHEST_PA - HALF_DIGIT_PA) {
            reject(
                    "highest-too-low",
                    readings,
                    TightnessTest.ISO,
                    "%s: the highest pressure is %.1f Pa; a house must reach at least 50 Pa.",
                    name,
                    highest);
        }
        if (lowest < LOWEST_PA - HALF_DIGIT_PA) {
            advise(
                    "lowest-too-low",
                    readings,
                    TightnessTest.E779,
                    "%s: the lowest pressure %.1f Pa is below the range of 10 to 60 Pa.",
                    name,
                    lowest);
        }
        if (lowest > USUAL_LOWEST_PA + HALF_DIGIT_PA) {
            notices.add(Notice.note(
                    "lowest-too-high",
                    readings,
                    sentence(
                            "%s: the lowest pressure is %.1f Pa. Leakage areas at 4 and 10 Pa are reached further from the"
                                    + " readings than with a lowest step of 10 to 15 Pa.",
                            name, lowest),
                    TightnessTest.E779));
        }
        double[] sorted = result.points().stream()
                .mapToDouble(Point::inducedPressurePa)
                .sorted()
                .toArray();
        double widest = 0;
        for (int i = 1; i < sorted.length; i++) {
            widest = Math.max(widest, sorted[i] - sorted[i - 1]);
        }
        if (widest > WIDEST_STEP_PA + HALF_DIGIT_PA) {
            advise(
                    "step-too-wide",
                    readings,
                    TightnessTest.ISO,
                    "%s: two readings are %.1f Pa apart; steps of at most 10 Pa are asked for.",
                    name,
                    widest);
        }
    }

    private void ofTwoDirections(@Nullable DirectionResult out, @Nullable DirectionResult inward) {
        if (out == null || inward == null) {
            notices.add(Notice.note(
                    "one-direction",
                    out == null ? "depressurisation" : "pressurisation",
                    "Only one direction was run. Flaps and membranes leak differently in the other; the mean of both is"
                            + " the better figure.",
                    TightnessTest.E779));
            return;
        }
        double apart = Math.abs(out.airflow50M3PerS() - inward.airflow50M3PerS())
                / (0.5 * (out.airflow50M3PerS() + inward.airflow50M3PerS()));
        if (apart > DIRECTIONS_APART) {
            notices.add(Notice.note(
                    "directions-differ",
                    "airflow50M3PerS",
                    sentence(
                            "The two directions differ by %.0f %% at 50 Pa: look for a flap, a valve or a membrane that"
                                    + " one direction opens.",
                            100 * apart),
                    TightnessTest.PRACTICE));
        }
    }

    private void ofWeather() {
        Double height = in.heightM();
        if (height != null) {
            double stack = Math.abs(in.indoorTemperatureC() - in.outdoorTemperatureC()) * height;
            boolean iso = in.standard() == Standard.ISO_9972;
            double most = iso ? ISO_STACK_KM : E779_STACK_KM;
            if (stack > most) {
                advise(
                        "strong-stack",
                        "heightM",
                        iso ? TightnessTest.ISO : TightnessTest.E779,
                        "Temperature difference times height is %.0f m·K, above %.0f m·K: the pressure is not the same at"
                                + " floor and ceiling, and a steady baseline is unlikely.",
                        stack,
                        most);
            }
        }
        Double wind = in.windMPerS();
        if (wind != null && wind > ISO_WIND_M_PER_S) {
            advise(
                    "strong-wind",
                    "windMPerS",
                    TightnessTest.ISO,
                    "Wind of %.1f m/s is above 6 m/s: a steady baseline is unlikely.",
                    wind);
        }
    }

    private void ofInstrumentsAndAir() {
        if (in.flowAccuracyFraction() == null || in.pressureAccuracyFraction() == null) {
            notices.add(Notice.note(
                    "instruments-left-out",
                    in.flowAccuracyFraction() == null ? "flowAccuracyFraction" : "pressureAccuracyFraction",
                    "The uncertainty leaves out the accuracy of an instrument that is not given; it is often the larger"
                            + " part.",
                    TightnessTest.ISO));
        }
        if (in.standard() == Standard.ISO_9972
                && (in.indoorRelativeHumidityFraction() == null || in.outdoorRelativeHumidityFraction() == null)) {
            notices.add(Notice.note(
                    "taken-as-dry",
                    in.indoorRelativeHumidityFraction() == null
                            ? "indoorRelativeHumidityFraction"
                            : "outdoorRelativeHumidityFraction",
                    "A relative humidity is not given and that air is taken as dry; at room conditions this moves a flow"
                            + " by up to half a percent.",
                    TightnessTest.ISO));
        }
    }

    private void ofCombustion(@Nullable DirectionResult out, @Nullable DirectionResult inward) {
        DirectionResult result = out != null ? out : inward;
        if (!in.roomAirAppliance() || result == null) {
            return;
        }
        double exhaust =
                new PowerLaw(result.standardCoefficientM3PerSPaN(), result.exponent()).airflowM3PerS(COMBUSTION_PA);
        advise(
                "room-air-appliance",
                "roomAirAppliance",
                Source.commonPractice("design screen of 5 Pa for appliances that vent by draught"),
                "Something in this house burns with room air. Fans that take out %.0f m³/h (%.0f cfm) more than comes in"
                        + " already pull it 5 Pa below outdoors, where combustion gas may spill into the rooms. Have"
                        + " spillage and carbon monoxide tested by a licensed trade before and after the house is made"
                        + " tighter.",
                3600 * exhaust,
                exhaust * Unit.CUBIC_METRE_PER_SECOND.ip().factor());
    }

    private void reject(String code, String field, Source source, String format, Object... values) {
        notices.add(Notice.rejected(code, field, sentence(format, values), source));
    }

    private void advise(String code, String field, Source source, String format, Object... values) {
        notices.add(Notice.advice(code, field, sentence(format, values), source));
    }

    private static String sentence(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
