package oakum.physics.calculation;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Anything of an input or output record that is not a number: a choice (an enum that implements {@link Labelled}), a
 * yes or no, a text, a nested record, or a list of records (one level deep and no deeper).
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Entry {
    String label();

    /** One sentence of help beside the field. */
    String help() default "";

    /** For a list: the least and the most rows. */
    int minRows() default 0;

    int maxRows() default 1000;

    /** For a text: its greatest length. */
    int maxLength() default 200;
}
