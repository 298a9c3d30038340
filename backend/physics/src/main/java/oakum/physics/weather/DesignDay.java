package oakum.physics.weather;

/**
 * The course of a design day (ASHRAE Fundamentals ch. 14, table of daily fractions; whether its hours are of solar or of
 * standard time was not verified: standard time is taken).
 */
public final class DesignDay {
    private static final double[] FRACTIONS = {
        .88, .92, .95, .98, 1, .98, .91, .74, .55, .38, .23, .13, .05, 0, 0, .06, .14, .24, .39, .50, .59, .68, .75, .82
    };

    /** Mean of the fractions: how far the daily mean lies below the maximum, in daily ranges. */
    static final double MEAN_FRACTION = mean();

    private DesignDay() {}

    /**
     * Temperature, °C, of an hour of the day.
     *
     * @param maximumC of the day
     * @param rangeK maximum less minimum, not negative
     * @param hour 1 to 24, as the clock stands at its end
     */
    public static double temperatureC(double maximumC, double rangeK, int hour) {
        return maximumC - rangeK * fraction(hour);
    }

    /** How far below its maximum the day is, in daily ranges. */
    static double fraction(int hour) {
        if (hour < 1 || hour > FRACTIONS.length) {
            throw new IllegalArgumentException("a day has the hours 1 to 24, not " + hour);
        }
        return FRACTIONS[hour - 1];
    }

    private static double mean() {
        double sum = 0;
        for (double fraction : FRACTIONS) {
            sum += fraction;
        }
        return sum / FRACTIONS.length;
    }
}
