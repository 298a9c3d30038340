package oakum.portal.site;

import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;

/** Refuses a value outside its range in the one form that every refusal of a number has. */
final class OutsideLimits {
    private OutsideLimits() {}

    static Refused of(String field, String label, double value, double min, double max, Unit unit, String source) {
        return new Refused(new Violation(
                field,
                String.valueOf(value),
                min,
                max,
                unit.ucum(),
                source,
                "%s: %s is %s, outside %s to %s."
                        .formatted(
                                field, label, Stops.text(unit, value), Stops.text(unit, min), Stops.text(unit, max))));
    }
}
