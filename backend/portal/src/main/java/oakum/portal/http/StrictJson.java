package oakum.portal.http;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import java.lang.reflect.RecordComponent;
import oakum.physics.calculation.Quantity;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.cfg.CoercionAction;
import tools.jackson.databind.cfg.CoercionInputShape;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.databind.cfg.MapperConfig;
import tools.jackson.databind.deser.std.StdScalarDeserializer;
import tools.jackson.databind.introspect.Annotated;
import tools.jackson.databind.introspect.AnnotatedMember;
import tools.jackson.databind.introspect.AnnotatedParameter;
import tools.jackson.databind.introspect.JacksonAnnotationIntrospector;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.type.LogicalType;

/**
 * JSON that takes nothing for something else: an unknown field, a missing one, a number as text, 3.7 for a whole number,
 * a field given twice, NaN and infinities are all refused. A component of a record may be left out or be null where it
 * is {@code @Nullable}, or where it is a boxed {@code @Quantity}; every other one must stand there.
 */
@Configuration(proxyBeanMethods = false)
class StrictJson {
    @Bean
    JsonMapperBuilderCustomizer strictJsonCustomizer() {
        return builder -> builder.enable(
                        DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                        DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(EnumFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
                .disable(EnumFeature.READ_ENUMS_USING_TO_STRING, EnumFeature.WRITE_ENUMS_USING_TO_STRING)
                .withCoercionConfig(
                        LogicalType.Textual,
                        text -> text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail))
                .withCoercionConfigDefaults(any -> any.setCoercion(CoercionInputShape.EmptyString, CoercionAction.Fail))
                .annotationIntrospector(new Needed())
                .addModule(new SimpleModule("strict")
                        .addDeserializer(String.class, new StorableText())
                        .addDeserializer(Double.class, new FiniteNumber(Double.class))
                        .addDeserializer(double.class, new FiniteNumber(double.class)));
    }

    /** Whether a record component must stand in the JSON and not be null. */
    static boolean needed(RecordComponent component) {
        boolean boxedQuantity = component.isAnnotationPresent(Quantity.class)
                && (component.getType() == Double.class || component.getType() == Integer.class);
        return !boxedQuantity && !component.getAnnotatedType().isAnnotationPresent(Nullable.class);
    }

    private static final class Needed extends JacksonAnnotationIntrospector {
        private static final long serialVersionUID = 1L;

        @Override
        public @Nullable Boolean hasRequiredMarker(MapperConfig<?> config, AnnotatedMember member) {
            RecordComponent component = component(member);
            return component == null ? super.hasRequiredMarker(config, member) : Boolean.valueOf(needed(component));
        }

        @Override
        public JsonSetter.Value findSetterInfo(MapperConfig<?> config, Annotated annotated) {
            RecordComponent component = component(annotated);
            return component == null
                    ? super.findSetterInfo(config, annotated)
                    : JsonSetter.Value.construct(needed(component) ? Nulls.FAIL : Nulls.SET, Nulls.FAIL);
        }

        private static @Nullable RecordComponent component(Annotated annotated) {
            if (annotated instanceof AnnotatedParameter parameter
                    && parameter.getDeclaringClass().isRecord()) {
                RecordComponent[] components = parameter.getDeclaringClass().getRecordComponents();
                if (parameter.getOwner().getParameterCount() == components.length) {
                    return components[parameter.getIndex()];
                }
            }
            return null;
        }
    }

    /** PostgreSQL keeps no character 0. */
    private static final class StorableText extends StdScalarDeserializer<String> {
        StorableText() {
            super(String.class);
        }

        @Override
        public String deserialize(JsonParser parser, DeserializationContext context) {
            if (parser.currentToken() != JsonToken.VALUE_STRING) {
                return (String) context.handleUnexpectedToken(String.class, parser);
            }
            String text = parser.getString();
            if (text.indexOf('\0') >= 0) {
                throw context.weirdStringException(text, String.class, "character 0");
            }
            return text;
        }
    }

    /** The library would read the text "NaN" as a number, and 1e999 as infinity. */
    private static final class FiniteNumber extends StdScalarDeserializer<Double> {
        FiniteNumber(Class<?> type) {
            super(type);
        }

        @Override
        public Double deserialize(JsonParser parser, DeserializationContext context) {
            JsonToken token = parser.currentToken();
            if (token != JsonToken.VALUE_NUMBER_FLOAT && token != JsonToken.VALUE_NUMBER_INT) {
                return (Double) context.handleUnexpectedToken(handledType(), parser);
            }
            double value = parser.getDoubleValue();
            if (!Double.isFinite(value)) {
                throw context.weirdNumberException(value, handledType(), "too large");
            }
            return value;
        }

        @Override
        public @Nullable Object getNullValue(DeserializationContext context) {
            if (handledType().isPrimitive()) {
                return context.reportInputMismatch(this, "null for a number");
            }
            return null;
        }
    }
}
