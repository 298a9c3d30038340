package oakum.physics.mould;

/**
 * Cuts a history into steps of at most one hour, at whole hours, so that hours, minutes and long steady stretches all
 * come out alike.
 */
abstract class HourSteps {
    private static final double GREATEST_HUMIDITY = 2;

    private double nowH;
    private double missingH;

    /** The end of what was added so far, hours since the start. */
    public final double hours() {
        return nowH;
    }

    /** Hours that nothing is known of. */
    public final double missingHours() {
        return missingH;
    }

    /**
     * Passes a stretch that nothing is known of, such as a silent sensor: the state stands still.
     *
     * @param hoursSinceStart end of the stretch, after the last end
     * @throws IllegalArgumentException where time does not go forward
     */
    public final void skip(double hoursSinceStart) {
        requireForward(hoursSinceStart);
        missingH += hoursSinceStart - nowH;
        skipped(nowH, hoursSinceStart);
        nowH = hoursSinceStart;
    }

    /**
     * Walks from the last end to another one with one state.
     *
     * @throws IllegalArgumentException where time does not go forward or the state is no state
     */
    final void walk(double hoursSinceStart, double temperatureC, double wetnessFraction, String wetnessName) {
        requireForward(hoursSinceStart);
        if (!(temperatureC > -100 && temperatureC < 150)) {
            throw new IllegalArgumentException(
                    "temperature " + temperatureC + " °C at hour " + hoursSinceStart + " is outside -100 to 150 °C");
        }
        if (!(wetnessFraction >= 0 && wetnessFraction <= GREATEST_HUMIDITY)) {
            throw new IllegalArgumentException(wetnessName + " " + wetnessFraction + " at hour " + hoursSinceStart
                    + " is outside 0 to " + GREATEST_HUMIDITY + " (a fraction)");
        }
        while (nowH < hoursSinceStart) {
            double end = Math.min(Math.floor(nowH) + 1, hoursSinceStart);
            step(nowH, end - nowH, temperatureC, wetnessFraction);
            nowH = end;
        }
    }

    private void requireForward(double hoursSinceStart) {
        if (!(hoursSinceStart > nowH && hoursSinceStart < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "hour " + hoursSinceStart + " does not come after hour " + nowH + ", which was added last");
        }
    }

    /** One step of at most an hour that crosses no whole hour. */
    abstract void step(double startH, double lengthH, double temperatureC, double wetnessFraction);

    /** A stretch of unknown state. */
    void skipped(double startH, double endH) {}
}
