package oakum.portal.view;

import java.util.Locale;
import oakum.physics.calculation.Unit;
import oakum.portal.calculation.FieldJson;
import oakum.portal.people.Units;
import org.jspecify.annotations.Nullable;

/** Writes numbers into sentences, in the units in which somebody reads. */
record Shown(Units units) {
    private static final String NO_BREAK = "\u00a0";
    private static final String MINUS = "\u2212";

    /** "400 cfm": a value kept in this unit, with its symbol. */
    String value(double value, Unit unit) {
        String symbol = habit(unit).symbol();
        return number(value, unit) + (symbol.isEmpty() ? "" : NO_BREAK + symbol);
    }

    /** "400": for the first of two numbers that share a symbol. */
    String number(double value, Unit unit) {
        Unit.Shown habit = habit(unit);
        String text = String.format(Locale.ROOT, "%." + habit.digits() + "f", value * habit.factor() + habit.offset());
        if (text.indexOf('.') >= 0) {
            text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text.equals("-0") ? "0" : text.replace("-", MINUS);
    }

    /** A value as a record or a proof keeps it, in words where it is no number. */
    String text(String kept, FieldJson.@Nullable UnitJson unit) {
        if (unit == null) {
            return words(kept);
        }
        try {
            return value(Double.parseDouble(kept), unit.id());
        } catch (NumberFormatException e) {
            return words(kept);
        }
    }

    /** "2.1 became 83.5 Pa", or "is now 5 Pa", or "was taken out". */
    String became(@Nullable String old, @Nullable String present, FieldJson.@Nullable UnitJson unit) {
        if (present == null) {
            return "was taken out";
        }
        if (old == null) {
            return "is now " + text(present, unit);
        }
        return "went from " + (unit == null ? words(old) : bare(old, unit.id())) + " to " + text(present, unit);
    }

    private String bare(String kept, Unit unit) {
        try {
            return number(Double.parseDouble(kept), unit);
        } catch (NumberFormatException e) {
            return words(kept);
        }
    }

    private static String words(String kept) {
        return switch (kept) {
            case "true" -> "yes";
            case "false" -> "no";
            default ->
                kept.matches("[A-Z][A-Z_]+") ? kept.toLowerCase(Locale.ROOT).replace('_', ' ') : kept;
        };
    }

    private Unit.Shown habit(Unit unit) {
        return units == Units.IP ? unit.ip() : unit.si();
    }
}
