package oakum.portal.http;

import com.fasterxml.jackson.databind.JavaType;
import io.swagger.v3.core.converter.AnnotatedType;
import io.swagger.v3.core.converter.ModelConverter;
import io.swagger.v3.core.converter.ModelConverterContext;
import io.swagger.v3.core.util.Json31;
import io.swagger.v3.oas.models.media.Schema;
import java.lang.reflect.RecordComponent;
import java.util.Iterator;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Says in the OpenAPI document what {@link StrictJson} enforces: every component of a record stands there, unless it may
 * be null.
 */
@Component
class NeededInSchema implements ModelConverter {
    private final Map<String, Class<?>> named = new ConcurrentHashMap<>();
    private final Set<String> collisions = ConcurrentHashMap.newKeySet();

    /** Schemas go by the simple name of their record; two records of one name would silently become one. */
    Set<String> collisions() {
        return Set.copyOf(collisions);
    }

    @Override
    public @Nullable Schema<?> resolve(
            AnnotatedType type, ModelConverterContext context, Iterator<ModelConverter> chain) {
        if (!chain.hasNext()) {
            return null;
        }
        Schema<?> schema = chain.next().resolve(type, context, chain);
        JavaType java = Json31.mapper().constructType(type.getType());
        if (schema != null && java != null && java.getRawClass().isRecord()) {
            String reference = schema.get$ref();
            Schema<?> model = reference == null
                    ? schema
                    : context.getDefinedModels().get(reference.substring(reference.lastIndexOf('/') + 1));
            if (reference != null) {
                Class<?> first = named.putIfAbsent(reference, java.getRawClass());
                if (first != null && first != java.getRawClass()) {
                    collisions.add(
                            first.getName() + " and " + java.getRawClass().getName());
                }
            }
            if (model != null) {
                mark(model, java.getRawClass());
            }
        }
        return schema;
    }

    @SuppressWarnings("rawtypes") // so the library declares it
    private static void mark(Schema<?> model, Class<?> record) {
        Map<String, Schema> properties = model.getProperties();
        if (properties == null) {
            return;
        }
        for (RecordComponent component : record.getRecordComponents()) {
            Schema<?> property = properties.get(component.getName());
            if (property == null) {
                continue;
            }
            if (StrictJson.needed(component)) {
                if (model.getRequired() == null || !model.getRequired().contains(component.getName())) {
                    model.addRequiredItem(component.getName());
                }
            } else if (property.getTypes() != null) {
                property.addType("null");
            }
        }
    }
}
