package oakum.portal.houserecord;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import oakum.portal.http.Problem;
import org.springframework.http.HttpStatus;
import tools.jackson.databind.JsonNode;

/**
 * Reads a part from JSON by its declaration and names the field where something is wrong: nothing unknown, nothing
 * missing, no number as text.
 */
final class StrictReader {
    private static final Pattern ROW_NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{0,39}");

    private StrictReader() {}

    /**
     * Reads a part.
     *
     * @throws Problem 400 {@code malformed-body} where the JSON does not fit the declaration
     * @throws Refused where a value breaks a limit
     */
    static Record read(PartKind kind, JsonNode document) {
        return build(kind, leaves(kind, document));
    }

    /**
     * Reads a part as it was kept, which may be before a list or an optional field existed and before a limit was drawn
     * tighter: what was kept stays readable.
     */
    static Record kept(PartKind kind, JsonNode document) {
        return Canonical.read(kind.type(), leaves(kind, document));
    }

    private static Map<String, String> leaves(PartKind kind, JsonNode document) {
        if (!document.isObject()) {
            throw malformed(kind.key(), "must be an object");
        }
        Map<String, String> leaves = new LinkedHashMap<>();
        group(kind.key() + ".", "", kind.fields(), document, leaves);
        return leaves;
    }

    /** Builds a part from its leaves and holds it against its limits. */
    static Record build(PartKind kind, Map<String, String> leaves) {
        try {
            Record part = Canonical.read(kind.type(), leaves);
            Limits.require(part);
            return part;
        } catch (Refused refused) {
            throw under(kind.key() + ".", refused);
        }
    }

    /** The same refusal with its fields pointed at from a prefix. */
    static Refused under(String prefix, Refused refused) {
        return new Refused(refused.violations().stream()
                .map(v -> new Violation(
                        prefix + v.field(), v.value(), v.min(), v.max(), v.unit(), v.source(), v.sentence()))
                .toList());
    }

    private static void group(
            String shown, String pointer, List<Field> fields, JsonNode node, Map<String, String> leaves) {
        Set<String> known = new HashSet<>();
        for (Field field : fields) {
            known.add(field.name());
            JsonNode value = node.get(field.name());
            String at = shown + field.name();
            if (value == null || value.isNull()) {
                if (!field.optional() && field.kind() != Field.Kind.ROWS) {
                    throw malformed(at, "is missing");
                }
            } else {
                value(at, pointer + field.name(), field, value, leaves);
            }
        }
        for (String name : node.propertyNames()) {
            if (!known.contains(name)) {
                throw malformed(shown + name, "is not a field of this part");
            }
        }
    }

    private static void value(String shown, String pointer, Field field, JsonNode node, Map<String, String> leaves) {
        switch (field.kind()) {
            case GROUP -> {
                require(node.isObject(), shown, "must be an object");
                group(shown + ".", pointer + ".", field.fields(), node, leaves);
            }
            case ROWS -> rows(shown, pointer, field, node, leaves);
            case NUMBERS -> {
                require(node.isArray(), shown, "must be a list");
                for (int i = 0; i < node.size(); i++) {
                    require(node.get(i).isNumber(), shown + "[" + i + "]", "must be a number");
                    leaves.put(
                            pointer + "[" + i + "]", Canonical.text(node.get(i).doubleValue()));
                }
            }
            default -> leaves.put(pointer, leaf(shown, field, node));
        }
    }

    private static void rows(String shown, String pointer, Field field, JsonNode node, Map<String, String> leaves) {
        require(node.isArray(), shown, "must be a list");
        boolean named = field.fields().stream().anyMatch(f -> f.name().equals("id"));
        Set<String> names = new HashSet<>();
        for (int i = 0; i < node.size(); i++) {
            JsonNode row = node.get(i);
            String at = shown + "[" + i + "]";
            require(row.isObject(), at, "must be an object");
            String name = Integer.toString(i);
            JsonNode id = row.get("id");
            if (named && id != null && id.isString()) {
                name = id.stringValue();
                require(
                        ROW_NAME.matcher(name).matches(),
                        at + ".id",
                        "must be 1 to 40 letters, digits or hyphens, beginning with a letter or digit");
                require(names.add(name), at + ".id", "stands in the list twice: \"" + name + "\"");
            }
            group(at + ".", pointer + "[" + name + "].", field.fields(), row, leaves);
        }
    }

    /**
     * The canonical text of a single value.
     *
     * @throws Problem 400 where it has another type than the field
     */
    static String leaf(String shown, Field field, JsonNode node) {
        switch (field.kind()) {
            case NUMBER, NUMBERS -> {
                require(node.isNumber() && Double.isFinite(node.doubleValue()), shown, "must be a number");
                return Canonical.text(node.doubleValue());
            }
            case INTEGER -> {
                require(node.isIntegralNumber() && node.canConvertToInt(), shown, "must be a whole number");
                return Integer.toString(node.intValue());
            }
            case YES_NO -> {
                require(node.isBoolean(), shown, "must be true or false");
                return Boolean.toString(node.booleanValue());
            }
            case CHOICE -> {
                String options = String.join(
                        ", ", field.options().stream().map(Field.Option::id).toList());
                require(
                        node.isString() && field.options().stream().anyMatch(o -> o.id().equals(node.stringValue())),
                        shown,
                        "must be one of " + options);
                return node.stringValue();
            }
            case TEXT -> {
                require(node.isString(), shown, "must be a text");
                return node.stringValue();
            }
            default -> throw malformed(shown, "must be a single value");
        }
    }

    private static void require(boolean right, String field, String must) {
        if (!right) {
            throw malformed(field, must);
        }
    }

    static Problem malformed(String field, String what) {
        return new Problem(HttpStatus.BAD_REQUEST, "malformed-body", field + " " + what + ".").with("field", field);
    }
}
