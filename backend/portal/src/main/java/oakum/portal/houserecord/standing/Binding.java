package oakum.portal.houserecord.standing;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where one input of a proof comes from: a path of the record, or a value that somebody typed.
 *
 * <p>A path to a single value fills a single input. A path to a group or to a list fills every input of the same name
 * beneath it, row by row: {@code devices} from {@code air.exhaust}. {@code [*]} in both stands for every row. A typed
 * value with {@code [*]} goes into every row that is there by then; later bindings override earlier ones.
 *
 * @param input pointer into the input record of the calculation; for submitted evidence, what the value was used for
 * @param path into the record, or null for a typed value
 * @param value the typed value as canonical text, or null
 * @param origin in words: "data sheet, read by the designer"
 * @param fields for groups and lists, where the names differ: input's name to record's name
 */
public record Binding(
        String input, @Nullable String path, @Nullable String value, String origin, Map<String, String> fields) {

    @SuppressWarnings({"ConstantConditions", "NullAway"}) // JSON may leave both out
    public Binding {
        origin = origin == null ? "" : origin;
        fields = fields == null ? Map.of() : Map.copyOf(fields);
    }

    /** From the record. */
    public static Binding of(String input, String path) {
        return new Binding(input, path, null, "house record", Map.of());
    }

    /** From the record, with names that differ. */
    public static Binding of(String input, String path, Map<String, String> fields) {
        return new Binding(input, path, null, "house record", fields);
    }

    /** A typed value. */
    public static Binding typed(String input, String value, String origin) {
        return new Binding(input, null, value, origin, Map.of());
    }
}
