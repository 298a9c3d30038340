package oakum.portal.material;

import java.time.Instant;
import java.util.List;
import oakum.physics.calculation.Source;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.MaterialProperty;
import oakum.portal.calculation.FieldJson.UnitJson;
import org.jspecify.annotations.Nullable;

/**
 * A material that layers may name.
 *
 * @param id what a layer names; of an own material it carries the content
 * @param own whether the firm added it; the others come with the portal
 * @param offered whether new layers are offered it; where not, it stays readable and can still be computed with
 * @param properties what is known of it; what does not stand here a calculation that needs it refuses
 * @param values as they were typed: what a changed data sheet begins from
 * @param addedBy who added it; null where it comes with the portal
 * @param supersededBy the id of the later material of the same short name, or null
 */
record MaterialJson(
        String id,
        String label,
        boolean own,
        boolean offered,
        List<MaterialPropertyJson> properties,
        MaterialInput values,
        @Nullable String addedBy,
        @Nullable Instant addedAt,
        @Nullable String supersededBy,
        @Nullable String withdrawnBy,
        @Nullable Instant withdrawnAt,
        List<String> actions) {

    /**
     * One property and where it comes from.
     *
     * @param source the citation
     * @param status how well the source was seen
     * @param statusLabel the same in words
     */
    record MaterialPropertyJson(
            MaterialProperty property,
            String label,
            String source,
            Source.Status status,
            String statusLabel,
            List<MaterialValueJson> values) {}

    /**
     * One value of a property: a number, a choice, or a curve.
     *
     * @param field of {@link MaterialInput}
     * @param unit of the number or of the curve's values; null for a choice
     * @param value the number; null for a choice or a curve
     * @param choice the words of a choice; null for a number or a curve
     * @param points of a curve; empty for a number or a choice
     */
    record MaterialValueJson(
            String field,
            String label,
            String symbol,
            @Nullable UnitJson unit,
            @Nullable Double value,
            @Nullable String choice,
            List<MaterialPointJson> points) {}

    /**
     * A point of a curve.
     *
     * @param humidityFraction relative humidity; of vapour resistance, the mean of both faces
     */
    record MaterialPointJson(double humidityFraction, double value) {}
}
