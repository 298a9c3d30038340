package oakum.physics.weather;

import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Violation;

/** Says of a value that no weather on earth has it. */
final class OutOfRange {
    private static final String PLAUSIBLE = "wider than any weather recorded on earth";

    private OutOfRange() {}

    static Violation violation(WeatherQuantity quantity, String where, double value) {
        return violation(
                where, quantity.label(), Double.toString(value), quantity.min(), quantity.max(), quantity.ucum());
    }

    static Violation violation(String where, String label, String value, double min, double max, String ucum) {
        String unit = ucum.equals("1") ? "" : " " + ucum;
        return new Violation(
                where,
                value,
                min,
                max,
                ucum,
                PLAUSIBLE,
                where + ": " + label + " = " + value + " is outside " + Canonical.text(min) + " to "
                        + Canonical.text(max) + unit + " (" + PLAUSIBLE + ").");
    }
}
