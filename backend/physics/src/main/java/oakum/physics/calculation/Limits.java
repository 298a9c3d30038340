package oakum.physics.calculation;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Holds a record against its declared limits. */
public final class Limits {
    private Limits() {}

    /**
     * Every broken limit of a record and of the records in it: outside the range, not finite, too few or too many rows,
     * a text too long.
     */
    public static List<Violation> violations(Record record) {
        List<Violation> found = new ArrayList<>();
        check("", record, found, new ArrayList<>());
        return found;
    }

    /**
     * Refuses a record that breaks a limit.
     *
     * @throws Refused naming every field, its value, the allowed range and the unit
     */
    public static void require(Record record) {
        List<Violation> found = violations(record);
        if (!found.isEmpty()) {
            throw new Refused(found);
        }
    }

    /** A notice for every value outside the range that its source advises. */
    public static List<Notice> advice(Record record) {
        List<Notice> notices = new ArrayList<>();
        check("", record, new ArrayList<>(), notices);
        return notices;
    }

    private static void check(String prefix, Record record, List<Violation> found, List<Notice> notices) {
        List<Field> fields = Fields.of(record.getClass());
        List<RecordComponent> components = Fields.components(record.getClass());
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            Object value = Canonical.get(components.get(i), record);
            String pointer = prefix + field.name();
            if (value == null) {
                if (!field.optional()) {
                    found.add(Violation.of(pointer, "", field.label() + " (" + pointer + ") is missing.", ""));
                }
            } else {
                check(pointer, field, value, found, notices);
            }
        }
    }

    private static void check(String pointer, Field field, Object value, List<Violation> found, List<Notice> notices) {
        if (value instanceof Record nested) {
            check(pointer + ".", nested, found, notices);
        } else if (value instanceof List<?> rows) {
            if (field.kind() == Field.Kind.ROWS && (rows.size() < field.minRows() || rows.size() > field.maxRows())) {
                found.add(new Violation(
                        pointer,
                        Integer.toString(rows.size()),
                        (double) field.minRows(),
                        (double) field.maxRows(),
                        "1",
                        field.limitSource(),
                        field.label() + ": " + rows.size() + " rows given, " + field.minRows() + " to "
                                + field.maxRows() + " allowed."));
            }
            for (int i = 0; i < rows.size(); i++) {
                Object row = rows.get(i);
                if (row == null) {
                    found.add(Violation.of(pointer + "[" + i + "]", "", pointer + "[" + i + "] is missing.", ""));
                } else {
                    check(pointer + "[" + i + "]", field, row, found, notices);
                }
            }
        } else if (value instanceof Number number) {
            number(pointer, field, number.doubleValue(), found, notices);
        } else if (value instanceof String text && text.length() > field.maxLength()) {
            found.add(Violation.of(
                    pointer,
                    text.substring(0, Math.min(40, text.length())) + "…",
                    field.label() + " has " + text.length() + " characters; at most " + field.maxLength()
                            + " are allowed.",
                    ""));
        }
    }

    private static void number(String pointer, Field field, double value, List<Violation> found, List<Notice> notices) {
        Double min = field.min();
        Double max = field.max();
        boolean inside = Double.isFinite(value)
                && (min == null || (field.minExclusive() ? value > min : value >= min))
                && (max == null || value <= max);
        Unit unit = field.unit() == null ? Unit.ONE : field.unit();
        if (!inside) {
            found.add(new Violation(
                    pointer,
                    Double.isFinite(value) ? Canonical.text(value) : Double.toString(value),
                    min,
                    max,
                    unit.ucum(),
                    field.limitSource(),
                    field.label() + " (" + pointer + ") = " + shown(value, unit) + " is outside "
                            + range(field.minExclusive(), min, max, unit) + because(field.limitSource()) + "."));
            return;
        }
        Double low = field.advisedMin();
        Double high = field.advisedMax();
        if ((low != null && value < low) || (high != null && value > high)) {
            notices.add(Notice.advice(
                    "outside-advised-range",
                    pointer,
                    field.label() + " = " + shown(value, unit) + " is outside the advised range "
                            + range(false, low, high, unit) + because(field.advisedSource()) + ".",
                    new Source(field.advisedSource(), Source.Status.SEEN)));
        }
    }

    private static String shown(double value, Unit unit) {
        String number = Double.isFinite(value) ? Canonical.text(value) : Double.toString(value);
        return unit.ucum().equals("1") ? number : number + " " + unit.ucum();
    }

    private static String range(boolean minExclusive, @Nullable Double min, @Nullable Double max, Unit unit) {
        String end = unit.ucum().equals("1") ? "" : " " + unit.ucum();
        if (min != null && max != null) {
            return (minExclusive ? "above " : "") + Canonical.text(min) + " to " + Canonical.text(max) + end;
        }
        if (min != null) {
            return (minExclusive ? "above " : "at least ") + Canonical.text(min) + end;
        }
        return max != null ? "at most " + Canonical.text(max) + end : "finite numbers";
    }

    private static String because(String source) {
        return source.isEmpty() ? "" : " (" + source + ")";
    }
}
