package oakum.portal.calculation;

import java.util.List;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/**
 * One declared field, as a form needs it: calculations and the parts of the record are declared the same way.
 *
 * @param name the name in JSON, which ends in its unit
 * @param kind what stands in it
 * @param optional whether it may be left out
 * @param unit the unit of a number, else null
 * @param min the least value allowed, or null
 * @param max the greatest value allowed, or null
 * @param minExclusive whether {@code min} itself is refused
 * @param advisedMin the least value that the source advises, or null
 * @param advisedMax the greatest value that the source advises, or null
 * @param step the step to which a result is printed, 0 for as it is
 * @param leading whether it is one of the few results that people compare
 * @param limitField name of the field that holds the greatest value allowed for this result; empty for none
 * @param options the constants of a choice
 * @param fields the fields of a group or of each row
 */
public record FieldJson(
        String name,
        Field.Kind kind,
        String label,
        String symbol,
        String help,
        boolean optional,
        @Nullable UnitJson unit,
        @Nullable Double min,
        @Nullable Double max,
        boolean minExclusive,
        String limitSource,
        @Nullable Double advisedMin,
        @Nullable Double advisedMax,
        String advisedSource,
        double step,
        boolean leading,
        String limitField,
        int minRows,
        int maxRows,
        int maxLength,
        List<OptionJson> options,
        List<FieldJson> fields) {

    /** A unit: its code in the Unified Code for Units of Measure and how people of either habit are shown it. */
    public record UnitJson(Unit id, String ucum, ShownJson si, ShownJson ip) {
        /** The unit as clients are told it. */
        public static UnitJson of(Unit unit) {
            return new UnitJson(unit, unit.ucum(), ShownJson.of(unit.si()), ShownJson.of(unit.ip()));
        }

        /** The same where there may be none. */
        public static @Nullable UnitJson ofNullable(@Nullable Unit unit) {
            return unit == null ? null : of(unit);
        }
    }

    /** What is shown: {@code value * factor + offset}, with so many digits after the point. */
    public record ShownJson(String symbol, double factor, double offset, int digits) {
        static ShownJson of(Unit.Shown shown) {
            return new ShownJson(shown.symbol(), shown.factor(), shown.offset(), shown.digits());
        }
    }

    /** One constant of a choice. */
    public record OptionJson(String id, String label, String source) {}

    /** The fields of a record, in their order. */
    public static List<FieldJson> of(List<Field> fields) {
        return fields.stream().map(FieldJson::of).toList();
    }

    private static FieldJson of(Field field) {
        return new FieldJson(
                field.name(),
                field.kind(),
                field.label(),
                field.symbol(),
                field.help(),
                field.optional(),
                UnitJson.ofNullable(field.unit()),
                field.min(),
                field.max(),
                field.minExclusive(),
                field.limitSource(),
                field.advisedMin(),
                field.advisedMax(),
                field.advisedSource(),
                field.step(),
                field.leading(),
                field.limitField(),
                field.minRows(),
                field.maxRows(),
                field.maxLength(),
                field.options().stream()
                        .map(o -> new OptionJson(o.id(), o.label(), o.source()))
                        .toList(),
                of(field.fields()));
    }
}
