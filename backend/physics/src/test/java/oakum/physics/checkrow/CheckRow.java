package oakum.physics.checkrow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * One row of the reference sheets: a value that two independent hands agree on. The row's id and its source stand beside
 * the assertion, and each row that held is counted at the end of the run.
 *
 * <pre>{@code
 * row("R-PSY-04", "ASHRAE Fundamentals 2017 ch. 1 table 3, seen").near(saturationPressurePa(25), 3169.7, rel(3e-4));
 * }</pre>
 */
public final class CheckRow {
    private static final Set<String> HELD = Collections.synchronizedSet(new TreeSet<>());

    private final String id;
    private final String source;

    private CheckRow(String id, String source) {
        this.id = id;
        this.source = source;
    }

    /**
     * Names the row and its source.
     *
     * @param id as in the reference sheet
     * @param source citation, with "seen", "from memory" or "computed by ..."
     */
    public static CheckRow row(String id, String source) {
        return new CheckRow(id, source);
    }

    public static Tolerance rel(double fraction) {
        return new Tolerance(fraction, true);
    }

    public static Tolerance abs(double amount) {
        return new Tolerance(amount, false);
    }

    /** How far the actual value may lie from the expected one. */
    public record Tolerance(double amount, boolean relative) {
        double allowed(double expected) {
            return relative ? amount * Math.abs(expected) : amount;
        }
    }

    /** Asserts one number of the row; further numbers chain. */
    public CheckRow near(double actual, double expected, Tolerance tolerance) {
        HELD.remove(id);
        assertThat(actual)
                .as("%s (%s)", id, source)
                .isCloseTo(expected, org.assertj.core.data.Offset.offset(tolerance.allowed(expected)));
        HELD.add(id);
        return this;
    }

    /** Asserts an exact outcome of the row. */
    public CheckRow exactly(Object actual, Object expected) {
        HELD.remove(id);
        assertThat(actual).as("%s (%s)", id, source).isEqualTo(expected);
        HELD.add(id);
        return this;
    }

    static Set<String> held() {
        return Set.copyOf(HELD);
    }
}
