package oakum.physics.calculation;

import org.jspecify.annotations.Nullable;

/**
 * One field that a calculation refuses, with everything a person needs to mend it.
 *
 * @param field pointer such as {@code devices[2].airflowM3PerS}
 * @param value the refused value as text
 * @param min the least value allowed, or null where there is none
 * @param max the greatest value allowed, or null where there is none
 * @param unit UCUM code of the unit; empty where it has none
 * @param source where the limit comes from
 * @param sentence the whole sentence
 */
public record Violation(
        String field,
        String value,
        @Nullable Double min,
        @Nullable Double max,
        String unit,
        String source,
        String sentence) {

    /** A refusal that is not about a single range, such as two fields that contradict each other. */
    public static Violation of(String field, Object value, String sentence, String source) {
        return new Violation(field, String.valueOf(value), null, null, "", source, sentence);
    }
}
