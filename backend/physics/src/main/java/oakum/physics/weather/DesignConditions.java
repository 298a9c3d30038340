package oakum.physics.weather;

import java.util.Arrays;

/**
 * What a year's weather is designed for: the temperatures that it keeps above or below in all but a small share of its
 * hours (ASHRAE Fundamentals ch. 14, annual cumulative frequency). From a typical year they are milder than from many
 * real ones.
 *
 * @param heating996C exceeded in 99.6 % of the hours
 * @param heating990C exceeded in 99 % of the hours
 * @param cooling004C exceeded in 0.4 % of the hours
 * @param cooling010C exceeded in 1 % of the hours
 * @param cooling020C exceeded in 2 % of the hours
 * @param coolingVapourPressurePa mean vapour pressure of the hours within half a kelvin of {@code cooling010C}
 * @param hottestMonthRangeK mean daily range of the month with the highest mean
 */
public record DesignConditions(
        double heating996C,
        double heating990C,
        double cooling004C,
        double cooling010C,
        double cooling020C,
        double coolingVapourPressurePa,
        double hottestMonthRangeK) {
    private static final double HALF_KELVIN = 0.5;

    /**
     * From the hours of a year.
     *
     * @throws IllegalArgumentException where it is not a whole year
     */
    public static DesignConditions of(HourlyWeather year) {
        if (!year.isWholeYear()) {
            throw new IllegalArgumentException("design conditions need a whole year, not " + year.hours() + " hours");
        }
        double[] sorted = year.values(WeatherQuantity.AIR_TEMPERATURE);
        Arrays.sort(sorted);
        double cooling = exceeded(sorted, 0.01);
        return new DesignConditions(
                exceeded(sorted, 0.996),
                exceeded(sorted, 0.99),
                exceeded(sorted, 0.004),
                cooling,
                exceeded(sorted, 0.02),
                coincident(year, cooling),
                hottestMonthRange(year));
    }

    /** The value that this share of the sorted values exceeds, by a straight line between neighbours. */
    static double exceeded(double[] sorted, double share) {
        double at = (1 - share) * sorted.length - 0.5;
        int below = (int) Math.floor(Math.max(0, Math.min(sorted.length - 2.0, at)));
        double between = Math.max(0, Math.min(1, at - below));
        return sorted[below] + between * (sorted[below + 1] - sorted[below]);
    }

    private static double coincident(HourlyWeather year, double temperatureC) {
        double sum = 0;
        int count = 0;
        double nearest = Double.POSITIVE_INFINITY;
        double ofNearest = 0;
        for (int i = 0; i < year.hours(); i++) {
            double distance = Math.abs(year.temperatureC(i) - temperatureC);
            if (distance <= HALF_KELVIN) {
                sum += year.vapourPressurePa(i);
                count++;
            }
            if (distance < nearest) {
                nearest = distance;
                ofNearest = year.vapourPressurePa(i);
            }
        }
        return count == 0 ? ofNearest : sum / count;
    }

    private static double hottestMonthRange(HourlyWeather year) {
        double[] mean = new double[12];
        double[] range = new double[12];
        int[] days = new int[12];
        for (int day = 0; day < 365; day++) {
            int month = year.time(24 * day).getMonthValue() - 1;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int hour = 24 * day; hour < 24 * day + 24; hour++) {
                mean[month] += year.temperatureC(hour) / 24;
                low = Math.min(low, year.temperatureC(hour));
                high = Math.max(high, year.temperatureC(hour));
            }
            range[month] += high - low;
            days[month]++;
        }
        int hottest = 0;
        for (int month = 1; month < 12; month++) {
            hottest = mean[month] / days[month] > mean[hottest] / days[hottest] ? month : hottest;
        }
        return range[hottest] / days[hottest];
    }
}
