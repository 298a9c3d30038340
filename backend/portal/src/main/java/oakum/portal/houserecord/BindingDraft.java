package oakum.portal.houserecord;

import java.util.Map;
import java.util.Objects;
import oakum.physics.calculation.Canonical;
import oakum.portal.houserecord.standing.Binding;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Where one input comes from, as a person sends it.
 *
 * @param path into the record, or null for a typed value
 * @param value the typed value; in submitted evidence, the value that was seen at the path
 * @param fields for groups and lists, where names differ: input's name to record's name
 */
public record BindingDraft(
        String input,
        @Nullable String path,
        @Nullable JsonNode value,
        @Nullable String origin,
        @Nullable Map<String, String> fields) {

    /**
     * The binding that is kept.
     *
     * @throws oakum.portal.http.Problem 400 where the value is no single value
     */
    public Binding binding() {
        return new Binding(
                input,
                path,
                text(),
                Objects.requireNonNullElse(origin, path == null ? "typed" : "house record"),
                Objects.requireNonNullElse(fields, Map.of()));
    }

    private @Nullable String text() {
        if (value == null || value.isNull()) {
            return null;
        }
        if (value.isNumber()) {
            return Canonical.text(value.doubleValue());
        }
        if (value.isBoolean() || value.isString()) {
            return value.asString();
        }
        throw StrictReader.malformed("bindings." + input + ".value", "must be a number, a text, true or false");
    }
}
