package oakum.physics.calculation;

/** Three answers of a comparison with a limit. */
public enum Verdict implements Labelled {
    PASSES("passes"),
    FAILS("fails"),
    NOT_PROVEN("not proven: the uncertainty spans the limit");

    private final String label;

    Verdict(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * Compares a value that must not exceed a limit.
     *
     * @param value the result
     * @param uncertainty half the width of its interval, 0 where it has none; same unit, not negative
     * @param limit the greatest value allowed
     */
    public static Verdict atMost(double value, double uncertainty, double limit) {
        if (value + uncertainty <= limit) {
            return PASSES;
        }
        return value - uncertainty > limit ? FAILS : NOT_PROVEN;
    }

    /**
     * Compares a value that must lie within a range.
     *
     * @param value the result
     * @param uncertainty half the width of its interval, 0 where it has none; same unit, not negative
     * @param least the least value allowed, or negative infinity
     * @param greatest the greatest value allowed, or infinity
     */
    public static Verdict within(double value, double uncertainty, double least, double greatest) {
        Verdict above = atMost(value, uncertainty, greatest);
        Verdict below = atMost(-value, uncertainty, -least);
        if (above == FAILS || below == FAILS) {
            return FAILS;
        }
        return above == PASSES && below == PASSES ? PASSES : NOT_PROVEN;
    }
}
