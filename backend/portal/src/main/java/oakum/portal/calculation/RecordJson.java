package oakum.portal.calculation;

import java.lang.reflect.RecordComponent;
import java.util.List;
import oakum.physics.calculation.HasNotices;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A declared record as JSON: exactly its components, never a method that looks like a getter. Notices are left out: they
 * stand beside the numbers, not among them. Absent values are left out.
 */
final class RecordJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private RecordJson() {}

    static ObjectNode of(Record record) {
        ObjectNode object = NODES.objectNode();
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Object value = get(component, record);
            boolean notices =
                    record instanceof HasNotices && component.getName().equals("notices");
            if (value != null && !notices) {
                object.set(component.getName(), node(value));
            }
        }
        return object;
    }

    private static JsonNode node(Object value) {
        if (value instanceof Record record) {
            return of(record);
        }
        if (value instanceof List<?> rows) {
            ArrayNode array = NODES.arrayNode();
            rows.forEach(row -> array.add(node(row)));
            return array;
        }
        if (value instanceof Double number) {
            return NODES.numberNode(number);
        }
        if (value instanceof Integer number) {
            return NODES.numberNode(number);
        }
        if (value instanceof Boolean yes) {
            return NODES.booleanNode(yes);
        }
        return NODES.stringNode(value instanceof Enum<?> constant ? constant.name() : value.toString());
    }

    private static @Nullable Object get(RecordComponent component, Record record) {
        try {
            var accessor = component.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
