package oakum.portal.houserecord;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.physics.calculation.Field;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Pointers and canonical texts as the JSON of a declaration; what is not there is left out. */
final class LeavesJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private LeavesJson() {}

    static ObjectNode of(List<Field> fields, Map<String, String> leaves) {
        return group("", fields, leaves);
    }

    private static ObjectNode group(String prefix, List<Field> fields, Map<String, String> leaves) {
        ObjectNode object = NODES.objectNode();
        for (Field field : fields) {
            JsonNode value = value(prefix + field.name(), field, leaves);
            if (value != null) {
                object.set(field.name(), value);
            }
        }
        return object;
    }

    private static @Nullable JsonNode value(String pointer, Field field, Map<String, String> leaves) {
        return switch (field.kind()) {
            case GROUP -> {
                ObjectNode group = group(pointer + ".", field.fields(), leaves);
                yield group.isEmpty() && field.optional() ? null : group;
            }
            case ROWS -> {
                ArrayNode rows = NODES.arrayNode();
                keys(pointer, leaves)
                        .forEach(key -> rows.add(group(pointer + "[" + key + "].", field.fields(), leaves)));
                yield rows;
            }
            case NUMBERS -> {
                ArrayNode numbers = NODES.arrayNode();
                keys(pointer, leaves).forEach(key -> numbers.add(number(leaves.get(pointer + "[" + key + "]"))));
                yield numbers;
            }
            default -> leaf(field, leaves.get(pointer));
        };
    }

    private static @Nullable JsonNode leaf(Field field, @Nullable String text) {
        if (text == null) {
            return null;
        }
        return switch (field.kind()) {
            case NUMBER -> NODES.numberNode(number(text));
            case INTEGER -> NODES.numberNode((int) number(text));
            case YES_NO -> NODES.booleanNode(Boolean.parseBoolean(text));
            default -> NODES.stringNode(text);
        };
    }

    private static double number(@Nullable String text) {
        return text == null ? Double.NaN : Double.parseDouble(text);
    }

    private static Set<String> keys(String pointer, Map<String, String> leaves) {
        Set<String> keys = new LinkedHashSet<>();
        String start = pointer + "[";
        for (String at : leaves.keySet()) {
            if (at.startsWith(start)) {
                keys.add(at.substring(start.length(), at.indexOf(']', start.length())));
            }
        }
        return keys;
    }
}
