package oakum.physics.calculation;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A number of an input or output record: {@code double}, {@code int}, a boxed one (which may be left out), or a list of
 * boxed ones. Its name must end in its unit.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Quantity {
    /** What the trade calls it. */
    String label();

    /** The symbol in the equations. */
    String symbol() default "";

    Unit unit();

    /** The range in which the equations have meaning; outside it the calculation refuses. Inputs only. */
    double min() default Double.NEGATIVE_INFINITY;

    double max() default Double.POSITIVE_INFINITY;

    /** Whether the lower limit itself is refused. */
    boolean minExclusive() default false;

    /** Where the limits come from; required when there is a limit. */
    String limitSource() default "";

    /** The range that the source advises; outside it the calculation answers with a notice. */
    double advisedMin() default Double.NEGATIVE_INFINITY;

    double advisedMax() default Double.POSITIVE_INFINITY;

    String advisedSource() default "";

    /** The step to which a result is rounded once, at the edge of the calculation. Outputs only; 0 leaves it as it is. */
    double step() default 0;

    /** One of the few results that people compare when something upstream changes. Outputs only. */
    boolean leading() default false;

    /** Name of the input or output component that holds the greatest value allowed for this result; empty for none. */
    String limitField() default "";

    /** One sentence of help beside the field. */
    String help() default "";
}
