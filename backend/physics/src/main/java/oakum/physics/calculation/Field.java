package oakum.physics.calculation;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One component of an input or output record as its annotation declares it: everything a form, a schema or a printed
 * table needs.
 *
 * @param name the component's name, which ends in its unit
 * @param kind what stands in it
 * @param optional whether it may be left out
 * @param unit the unit of a number, else null
 * @param min the least value allowed, or null
 * @param max the greatest value allowed, or null
 * @param minExclusive whether {@code min} itself is refused
 * @param advisedMin the least value that the source advises, or null
 * @param advisedMax the greatest value that the source advises, or null
 * @param step the step to which a result is printed, 0 for as it is
 * @param options the constants of a choice
 * @param fields the components of a group or of each row
 */
public record Field(
        String name,
        Kind kind,
        String label,
        String symbol,
        String help,
        boolean optional,
        @Nullable Unit unit,
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
        List<Option> options,
        List<Field> fields) {

    /** What stands in a field. */
    public enum Kind {
        NUMBER,
        INTEGER,
        NUMBERS,
        CHOICE,
        YES_NO,
        TEXT,
        GROUP,
        ROWS
    }

    /** One constant of a choice. */
    public record Option(String id, String label, String source) {}
}
