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
}
