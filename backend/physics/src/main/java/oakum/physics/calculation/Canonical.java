package oakum.physics.calculation;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One text for one value, so that comparing two values is comparing two strings: names in their declared order, plain
 * decimals, negative zero as zero, nothing that is not finite. A record becomes a flat map from pointer to text; a row
 * with a component {@code id} is pointed at by it ({@code devices[rangeHood].airflowM3PerS}), others by their place.
 */
public final class Canonical {
    private Canonical() {}

    /**
     * The plain decimal text of a finite number.
     *
     * @throws IllegalArgumentException where it is not finite
     */
    public static String text(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("not a finite number: " + value);
        }
        if (value == 0) {
            return "0";
        }
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** Every leaf of a record with its pointer, in declared order; absent values are left out. */
    public static Map<String, String> flatten(Record record) {
        Map<String, String> leaves = new LinkedHashMap<>();
        flatten("", record, leaves);
        return leaves;
    }

    /** The same as one text: a line {@code pointer=value} for every leaf. */
    public static String lines(Record record) {
        return flatten(record).entrySet().stream()
                .map(leaf -> leaf.getKey() + "=" + leaf.getValue())
                .collect(Collectors.joining("\n"));
    }

    private static void flatten(String prefix, Record record, Map<String, String> leaves) {
        for (RecordComponent component : Fields.components(record.getClass())) {
            Object value = get(component, record);
            if (value != null) {
                put(prefix + component.getName(), value, leaves);
            }
        }
    }

    private static void put(String pointer, Object value, Map<String, String> leaves) {
        if (value instanceof Record nested) {
            flatten(pointer + ".", nested, leaves);
        } else if (value instanceof Collection<?> rows) {
            int i = 0;
            for (Object row : rows) {
                put(pointer + "[" + key(row, i) + "]", row, leaves);
                i++;
            }
        } else {
            leaves.put(pointer, leaf(value));
        }
    }

    private static String key(Object row, int place) {
        if (row instanceof Record record) {
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                if (component.getName().equals("id") && component.getType() == String.class) {
                    return String.valueOf(get(component, record));
                }
            }
        }
        return Integer.toString(place);
    }

    private static String leaf(Object value) {
        if (value instanceof Double number) {
            return text(number);
        }
        return value instanceof Enum<?> constant ? constant.name() : value.toString();
    }

    /**
     * Builds a record from pointers and texts: the inverse of {@link #flatten}.
     *
     * @throws Refused where a component is missing or its text cannot be read
     */
    public static <R extends Record> R read(Class<R> type, Map<String, String> leaves) {
        return read(type, "", leaves);
    }

    private static <R extends Record> R read(Class<R> type, String prefix, Map<String, String> leaves) {
        return rebuild(type, component -> value(component, prefix + component.getName(), leaves));
    }

    private static @Nullable Object value(RecordComponent component, String pointer, Map<String, String> leaves) {
        Class<?> type = component.getType();
        if (type == List.class) {
            return rows(component, pointer, leaves);
        }
        if (type.isRecord()) {
            boolean present = leaves.keySet().stream().anyMatch(k -> k.startsWith(pointer + "."));
            return present || component.getAnnotatedType().getAnnotation(Nullable.class) == null
                    ? read(type.asSubclass(Record.class), pointer + ".", leaves)
                    : null;
        }
        String text = leaves.get(pointer);
        if (text == null) {
            if (type.isPrimitive()
                    || !(type == Double.class
                            || type == Integer.class
                            || component.getAnnotatedType().isAnnotationPresent(Nullable.class))) {
                throw new Refused(Violation.of(pointer, "", pointer + " is missing.", ""));
            }
            return null;
        }
        return parse(type, pointer, text);
    }

    private static List<Object> rows(RecordComponent component, String pointer, Map<String, String> leaves) {
        List<String> keys = leaves.keySet().stream()
                .filter(k -> k.startsWith(pointer + "["))
                .map(k -> k.substring(pointer.length() + 1, k.indexOf(']', pointer.length())))
                .distinct()
                .toList();
        Class<? extends Record> row = Fields.rowType(component);
        List<Object> list = new ArrayList<>();
        for (String key : keys) {
            String at = pointer + "[" + key + "]";
            if (row != null) {
                list.add(read(row, at + ".", leaves));
            } else {
                Class<?> element =
                        (Class<?>) ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
                String text = leaves.get(at);
                if (text == null) {
                    throw new Refused(Violation.of(at, "", at + " is missing.", ""));
                }
                list.add(parse(element, at, text));
            }
        }
        return List.copyOf(list);
    }

    private static Object parse(Class<?> type, String pointer, String text) {
        try {
            if (type == double.class || type == Double.class) {
                return Double.valueOf(text);
            }
            if (type == int.class || type == Integer.class) {
                return Integer.valueOf(text);
            }
        } catch (NumberFormatException e) {
            throw new Refused(Violation.of(pointer, text, pointer + " = \"" + text + "\" is not a number.", ""));
        }
        if (type == boolean.class || type == Boolean.class) {
            return Boolean.valueOf(text);
        }
        if (type.isEnum()) {
            for (Object constant : type.getEnumConstants()) {
                if (((Enum<?>) constant).name().equals(text)) {
                    return constant;
                }
            }
            throw new Refused(Violation.of(pointer, text, pointer + " = \"" + text + "\" is none of the choices.", ""));
        }
        return text;
    }

    /** The same record with every quantity rounded once to its declared step, half away from zero. */
    public static <R extends Record> R rounded(R record) {
        @SuppressWarnings("unchecked")
        Class<R> type = (Class<R>) record.getClass();
        return rebuild(type, component -> {
            Object value = get(component, record);
            Quantity quantity = component.getAnnotation(Quantity.class);
            double step = quantity == null ? 0 : quantity.step();
            return value == null ? null : rounded(value, step);
        });
    }

    private static Object rounded(Object value, double step) {
        if (value instanceof Record nested) {
            return rounded(nested);
        }
        if (value instanceof List<?> rows) {
            return rows.stream().map(row -> rounded(row, step)).toList();
        }
        return value instanceof Double number && step > 0 ? toStep(number, step) : value;
    }

    /** A number rounded to a step, half away from zero, as exact decimals. */
    public static double toStep(double value, double step) {
        BigDecimal s = BigDecimal.valueOf(step);
        return BigDecimal.valueOf(value)
                .divide(s, 0, RoundingMode.HALF_UP)
                .multiply(s)
                .doubleValue();
    }

    /** Six decimal digits that stand for a text; people read them to each other. */
    public static String copyCode(String text) {
        byte[] digest = sha256(text);
        long number = 0;
        for (int i = 0; i < 7; i++) {
            number = number << 8 | (digest[i] & 0xff);
        }
        String digits = String.format("%06d", number % 1_000_000);
        return digits.substring(0, 3) + " " + digits.substring(3);
    }

    /** The SHA-256 of a text in UTF-8, as 64 hex digits. */
    public static String hash(String text) {
        return HexFormat.of().formatHex(sha256(text));
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private interface ComponentValue {
        @Nullable
        Object of(RecordComponent component);
    }

    private static <R extends Record> R rebuild(Class<R> type, ComponentValue values) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] arguments = new Object[components.length];
        boolean hasNotices = HasNotices.class.isAssignableFrom(type);
        for (int i = 0; i < components.length; i++) {
            types[i] = components[i].getType();
            arguments[i] = values.of(components[i]);
            if (arguments[i] == null && hasNotices && components[i].getName().equals("notices")) {
                arguments[i] = List.of();
            }
        }
        try {
            var constructor = type.getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(type.getName() + " cannot be built", e);
        }
    }

    static @Nullable Object get(RecordComponent component, Record record) {
        try {
            var accessor = component.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
