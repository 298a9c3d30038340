package oakum.portal.commissioning;

import oakum.physics.calculation.Unit;
import oakum.portal.calculation.FieldJson.UnitJson;
import org.jspecify.annotations.Nullable;

/**
 * What the design says.
 *
 * @param name ends in its unit
 * @param path into the record or a proof, or null
 * @param origin who gave it, when and why; or the rule
 */
public record DesignValue(
        String name,
        String label,
        UnitJson unit,
        double value,
        ValueSource source,
        String sourceLabel,
        @Nullable String path,
        String origin) {

    static DesignValue of(
            String name,
            String label,
            Unit unit,
            double value,
            ValueSource source,
            @Nullable String path,
            String origin) {
        return new DesignValue(name, label, UnitJson.of(unit), value, source, source.label(), path, origin);
    }
}
