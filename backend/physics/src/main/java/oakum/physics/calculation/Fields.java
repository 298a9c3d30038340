package oakum.physics.calculation;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** Reads the declared fields of a record from its annotations. */
public final class Fields {
    private static final Map<Class<?>, List<Field>> KNOWN = new ConcurrentHashMap<>();

    private Fields() {}

    /**
     * The declared fields of a record, in their order. The component {@code notices} of {@link HasNotices} is left out:
     * it is not a quantity.
     *
     * @throws IllegalStateException where a component has no annotation or a type that no field can hold
     */
    public static List<Field> of(Class<? extends Record> type) {
        List<Field> known = KNOWN.get(type);
        if (known != null) {
            return known;
        }
        List<Field> fields = new ArrayList<>();
        for (RecordComponent component : components(type)) {
            fields.add(field(type, component));
        }
        List<Field> result = List.copyOf(fields);
        KNOWN.put(type, result);
        return result;
    }

    static List<RecordComponent> components(Class<?> type) {
        boolean hasNotices = HasNotices.class.isAssignableFrom(type);
        return Arrays.stream(type.getRecordComponents())
                .filter(c -> !(hasNotices && c.getName().equals("notices")))
                .toList();
    }

    /** The record type of the rows of a list component, or null where the component is no list of records. */
    static @Nullable Class<? extends Record> rowType(RecordComponent component) {
        if (component.getType() != List.class) {
            return null;
        }
        Type argument = ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
        return argument instanceof Class<?> c && c.isRecord() ? c.asSubclass(Record.class) : null;
    }

    private static Field field(Class<?> type, RecordComponent component) {
        Quantity quantity = component.getAnnotation(Quantity.class);
        Entry entry = component.getAnnotation(Entry.class);
        String where = type.getName() + "." + component.getName();
        if ((quantity == null) == (entry == null)) {
            throw new IllegalStateException(where + " needs exactly one of @Quantity and @Entry");
        }
        return quantity != null ? number(where, component, quantity) : other(where, component, entry);
    }

    private static Field number(String where, RecordComponent component, Quantity q) {
        Class<?> type = component.getType();
        boolean optional = type == Double.class || type == Integer.class;
        Field.Kind kind;
        if (type == double.class || type == Double.class) {
            kind = Field.Kind.NUMBER;
        } else if (type == int.class || type == Integer.class) {
            kind = Field.Kind.INTEGER;
        } else if (type == List.class) {
            kind = Field.Kind.NUMBERS;
        } else {
            throw new IllegalStateException(where + ": @Quantity stands on double, int or a list of Double");
        }
        return new Field(
                component.getName(),
                kind,
                q.label(),
                q.symbol(),
                q.help(),
                optional,
                q.unit(),
                finite(q.min()),
                finite(q.max()),
                q.minExclusive(),
                q.limitSource(),
                finite(q.advisedMin()),
                finite(q.advisedMax()),
                q.advisedSource(),
                q.step(),
                q.leading(),
                q.limitField(),
                0,
                1000,
                0,
                List.of(),
                List.of());
    }

    private static Field other(String where, RecordComponent component, Entry e) {
        Class<?> type = component.getType();
        Field.Kind kind;
        List<Field.Option> options = List.of();
        List<Field> fields = List.of();
        Class<? extends Record> rows = rowType(component);
        if (type.isEnum()) {
            kind = Field.Kind.CHOICE;
            options = options(where, type);
        } else if (type == boolean.class || type == Boolean.class) {
            kind = Field.Kind.YES_NO;
        } else if (type == String.class) {
            kind = Field.Kind.TEXT;
        } else if (type.isRecord()) {
            kind = Field.Kind.GROUP;
            fields = of(type.asSubclass(Record.class));
        } else if (rows != null) {
            kind = Field.Kind.ROWS;
            fields = of(rows);
        } else {
            throw new IllegalStateException(where + ": no field can hold a " + type.getName());
        }
        return new Field(
                component.getName(),
                kind,
                e.label(),
                "",
                e.help(),
                isNullable(component),
                null,
                null,
                null,
                false,
                "",
                null,
                null,
                "",
                0,
                false,
                "",
                e.minRows(),
                e.maxRows(),
                e.maxLength(),
                options,
                fields);
    }

    private static boolean isNullable(RecordComponent component) {
        return component.getAnnotatedType().isAnnotationPresent(Nullable.class);
    }

    private static List<Field.Option> options(String where, Class<?> type) {
        List<Field.Option> options = new ArrayList<>();
        for (Object constant : type.getEnumConstants()) {
            if (!(constant instanceof Labelled labelled)) {
                throw new IllegalStateException(where + ": the choice must implement Labelled");
            }
            options.add(new Field.Option(((Enum<?>) constant).name(), labelled.label(), labelled.source()));
        }
        return List.copyOf(options);
    }

    private static @Nullable Double finite(double limit) {
        return Double.isInfinite(limit) ? null : limit;
    }
}
