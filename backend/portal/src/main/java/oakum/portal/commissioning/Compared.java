package oakum.portal.commissioning;

import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.portal.calculation.FieldJson.UnitJson;
import org.jspecify.annotations.Nullable;

/**
 * One measured value beside its design.
 *
 * @param measured the mean of the readings, or what was computed from them
 * @param uncertainty half the width of its interval, same unit; 0 where nothing is known
 * @param min the least value allowed, or null
 * @param max the greatest value allowed, or null
 * @param design what it is compared with, or null where it is only shown
 * @param verdict null where it is only shown
 */
public record Compared(
        String name,
        String label,
        UnitJson unit,
        double measured,
        double uncertainty,
        @Nullable Double min,
        @Nullable Double max,
        @Nullable DesignValue design,
        @Nullable Verdict verdict,
        @Nullable String verdictLabel) {

    /** A value that is shown beside the others and compared with nothing. */
    static Compared shown(String name, String label, Unit unit, double measured, double uncertainty) {
        return new Compared(name, label, UnitJson.of(unit), measured, uncertainty, null, null, null, null, null);
    }

    /** A value that is shown beside its design and not judged. */
    static Compared beside(String name, String label, Unit unit, double measured, double uncertainty, DesignValue d) {
        return new Compared(name, label, UnitJson.of(unit), measured, uncertainty, null, null, d, null, null);
    }

    /** A value that must not exceed its design. */
    static Compared atMost(String name, String label, Unit unit, double measured, double uncertainty, DesignValue d) {
        return judged(name, label, unit, measured, uncertainty, null, d.value(), d);
    }

    /** A value that must reach its design. */
    static Compared atLeast(String name, String label, Unit unit, double measured, double uncertainty, DesignValue d) {
        return judged(name, label, unit, measured, uncertainty, d.value(), null, d);
    }

    /** A value that must lie near its design. */
    static Compared near(
            String name,
            String label,
            Unit unit,
            double measured,
            double uncertainty,
            DesignValue d,
            double toleranceFraction) {
        double band = Math.abs(d.value()) * toleranceFraction;
        return judged(name, label, unit, measured, uncertainty, d.value() - band, d.value() + band, d);
    }

    private static Compared judged(
            String name,
            String label,
            Unit unit,
            double measured,
            double uncertainty,
            @Nullable Double min,
            @Nullable Double max,
            DesignValue design) {
        Verdict verdict = Verdict.within(
                measured,
                uncertainty,
                min == null ? Double.NEGATIVE_INFINITY : min,
                max == null ? Double.POSITIVE_INFINITY : max);
        return new Compared(
                name, label, UnitJson.of(unit), measured, uncertainty, min, max, design, verdict, verdict.label());
    }
}
