package oakum.portal.http;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import oakum.physics.calculation.Refused;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.InputCoercionException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.InvalidNullException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;
import tools.jackson.databind.exc.ValueInstantiationException;

/** What is wrong with a JSON body, in our own sentences: the field, what stands there, what belongs there. */
public final class MalformedBody {
    private static final String MISSING = "Missing required creator property";
    private static final Set<Class<?>> WHOLE =
            Set.of(int.class, Integer.class, long.class, Long.class, short.class, Short.class);
    private static final Set<Class<?>> DECIMAL = Set.of(double.class, Double.class, float.class, Float.class);
    private static final int LONGEST_ECHO = 40;

    private MalformedBody() {}

    /**
     * The problem to answer with.
     *
     * @param e what the JSON library says
     * @return 400 {@code malformed-body}; a refusal that a record's own constructor gave is passed on as it is
     */
    public static RuntimeException of(JacksonException e) {
        if (e instanceof ValueInstantiationException) {
            for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
                if (cause instanceof Problem problem) {
                    return problem;
                }
                if (cause instanceof Refused refused) {
                    return refused;
                }
            }
        }
        String field = pointer(e.getPath());
        return Problem.malformed(field, sentence(e, field));
    }

    private static String sentence(JacksonException e, String field) {
        String what = field.isEmpty() ? "The body" : field;
        if (e instanceof UnrecognizedPropertyException unknown) {
            Collection<Object> known = Objects.requireNonNullElse(unknown.getKnownPropertyIds(), List.of());
            return "There is no field " + field + "."
                    + (known.isEmpty()
                            ? ""
                            : " Known here: "
                                    + known.stream().map(String::valueOf).collect(Collectors.joining(", ")) + ".");
        }
        if (e instanceof InvalidNullException) {
            return what + " must not be null.";
        }
        if (e instanceof MismatchedInputException mismatch) {
            if (String.valueOf(e.getOriginalMessage()).startsWith(MISSING)) {
                return what + " is missing.";
            }
            String expected = expected(mismatch.getTargetType());
            if (e instanceof InvalidFormatException format) {
                return what + " = " + echo(format.getValue()) + " is not " + expected + ".";
            }
            return what + " must be " + expected + found(mismatch) + ".";
        }
        if (e instanceof InputCoercionException tooLarge) {
            return what + " is too large or not whole; it must be " + expected(tooLarge.getTargetType()) + ".";
        }
        if (e instanceof StreamConstraintsException) {
            return "The body nests too deep, or a text or number in it is too long.";
        }
        if (e instanceof ValueInstantiationException) {
            return what + " has a value that is not allowed there.";
        }
        var at = e.getLocation();
        return at == null || at.getLineNr() < 1
                ? "The body is not JSON."
                : "The body is not JSON: line " + at.getLineNr() + ", column " + at.getColumnNr() + ".";
    }

    private static String found(MismatchedInputException e) {
        if (e.getCurrentToken() == null) {
            return "";
        }
        return switch (e.getCurrentToken()) {
            case START_OBJECT, END_OBJECT, PROPERTY_NAME -> ", not an object";
            case START_ARRAY, END_ARRAY -> ", not a list";
            case VALUE_STRING -> ", not text";
            case VALUE_NUMBER_INT -> ", not a number";
            case VALUE_NUMBER_FLOAT -> ", not a number with decimals";
            case VALUE_TRUE, VALUE_FALSE -> ", not true or false";
            case VALUE_NULL -> ", not null";
            default -> "";
        };
    }

    static String expected(@Nullable Class<?> type) {
        if (type == null) {
            return "something else";
        }
        if (type.isEnum()) {
            return "one of "
                    + Arrays.stream(type.getEnumConstants())
                            .map(constant -> ((Enum<?>) constant).name())
                            .collect(Collectors.joining(", "));
        }
        if (WHOLE.contains(type)) {
            return "a whole number";
        }
        if (DECIMAL.contains(type) || Number.class.isAssignableFrom(type)) {
            return "a number";
        }
        if (type == boolean.class || type == Boolean.class) {
            return "true or false";
        }
        if (type == char.class || type == Character.class) {
            return "one character";
        }
        if (type == String.class) {
            return "text without the character 0";
        }
        if (type == Instant.class) {
            return "an instant such as 2026-05-14T17:30:00Z";
        }
        if (type == LocalDate.class) {
            return "a date such as 2026-05-14";
        }
        if (type == UUID.class) {
            return "an id";
        }
        if (ZoneId.class.isAssignableFrom(type)) {
            return "a time zone such as America/Anchorage";
        }
        if (Collection.class.isAssignableFrom(type) || type.isArray()) {
            return "a list";
        }
        return type.isRecord() || Map.class.isAssignableFrom(type) ? "an object" : "of another form";
    }

    private static String echo(@Nullable Object value) {
        String text = String.valueOf(value).replace('\0', ' ');
        String shown = text.length() > LONGEST_ECHO ? text.substring(0, LONGEST_ECHO) + "…" : text;
        return value instanceof String ? "\"" + shown + "\"" : shown;
    }

    private static String pointer(List<JacksonException.Reference> path) {
        StringBuilder pointer = new StringBuilder();
        for (JacksonException.Reference step : path) {
            if (step.getPropertyName() != null) {
                pointer.append(pointer.isEmpty() ? "" : ".").append(step.getPropertyName());
            } else if (step.getIndex() >= 0) {
                pointer.append('[').append(step.getIndex()).append(']');
            }
        }
        return pointer.toString();
    }
}
