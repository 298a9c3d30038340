package oakum.portal.material;

import java.util.Arrays;
import java.util.List;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Fields;
import oakum.physics.calculation.Source;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.MaterialProperty;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.material.MaterialJson.MaterialPointJson;
import oakum.portal.material.MaterialJson.MaterialPropertyJson;
import oakum.portal.material.MaterialJson.MaterialValueJson;
import tools.jackson.databind.JsonNode;

/** What is known of a material, read off its declared fields. */
final class Known {
    private static final List<Field> FIELDS = Fields.of(MaterialInput.class);

    private Known() {}

    /**
     * Its properties in their printed order.
     *
     * @param values the material's values as JSON, absent ones left out
     */
    static List<MaterialPropertyJson> of(Material material, JsonNode values) {
        return Arrays.stream(MaterialProperty.values())
                .filter(material::knows)
                .map(property -> property(property, material.source(property), values))
                .toList();
    }

    private static MaterialPropertyJson property(MaterialProperty property, Source source, JsonNode values) {
        return new MaterialPropertyJson(
                property,
                property.label(),
                source.citation(),
                source.status(),
                source.status().label(),
                FIELDS.stream()
                        .filter(field -> property.components().contains(field.name()))
                        .filter(field -> !values.path(field.name()).isEmpty()
                                || values.path(field.name()).isValueNode())
                        .map(field -> value(field, values.get(field.name())))
                        .toList());
    }

    private static MaterialValueJson value(Field field, JsonNode value) {
        return switch (field.kind()) {
            case NUMBER ->
                new MaterialValueJson(
                        field.name(),
                        field.label(),
                        field.symbol(),
                        UnitJson.ofNullable(field.unit()),
                        value.asDouble(),
                        null,
                        List.of());
            case CHOICE ->
                new MaterialValueJson(
                        field.name(),
                        field.label(),
                        field.symbol(),
                        null,
                        null,
                        field.options().stream()
                                .filter(option -> option.id().equals(value.asString()))
                                .findFirst()
                                .orElseThrow()
                                .label(),
                        List.of());
            case ROWS -> curve(field, value);
            default -> throw new IllegalStateException("no material is told by a field of kind " + field.kind());
        };
    }

    /** Rows are pairs: the humidity, and the value at it. */
    private static MaterialValueJson curve(Field field, JsonNode rows) {
        Field humidity = field.fields().get(0);
        Field at = field.fields().get(1);
        return new MaterialValueJson(
                field.name(),
                field.label(),
                at.symbol(),
                UnitJson.ofNullable(at.unit()),
                null,
                null,
                rows.valueStream()
                        .map(row -> new MaterialPointJson(
                                row.get(humidity.name()).asDouble(),
                                row.get(at.name()).asDouble()))
                        .toList());
    }
}
