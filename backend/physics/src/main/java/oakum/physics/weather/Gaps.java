package oakum.physics.weather;

import java.util.Arrays;

/**
 * Bridges what is missing in hourly values (NaN), by rules that are told to the reader: up to six hours by a straight
 * line, up to three days by the same hours of the days around, never longer (proposed here, no published source). Sun is
 * always taken from the days around, a direction held, and rain taken as none.
 */
final class Gaps {
    static final int LONGEST_LINE_H = 6;
    static final int LONGEST_H = 72;
    private static final int DAY_H = 24;

    /** What was bridged. */
    record Bridged(int hours, int longestH, int firstHour) {
        /** Whether nothing is missing any more. */
        boolean complete() {
            return longestH <= LONGEST_H;
        }
    }

    private Gaps() {}

    /**
     * Bridges the gaps in place; those that are longer than three days are left.
     *
     * @param wraps whether the last hour is followed by the first
     */
    static Bridged bridge(double[] hourly, WeatherQuantity.Kind kind, boolean wraps) {
        double[] given = hourly.clone();
        int n = given.length;
        int missing = 0;
        int longest = 0;
        int firstOfLongest = -1;
        int origin = wraps ? firstGiven(given) : 0;
        for (int k = 0; k < n; k++) {
            int at = (origin + k) % n;
            if (!Double.isNaN(given[at])) {
                continue;
            }
            int length = 1;
            while (k + length < n && Double.isNaN(given[(at + length) % n])) {
                length++;
            }
            missing += length;
            if (length > longest) {
                longest = length;
                firstOfLongest = at;
            }
            if (length <= LONGEST_H) {
                bridge(hourly, given, at, length, kind, wraps);
            }
            k += length;
        }
        return new Bridged(missing, longest, firstOfLongest);
    }

    private static int firstGiven(double[] given) {
        for (int i = 0; i < given.length; i++) {
            if (!Double.isNaN(given[i])) {
                return i;
            }
        }
        return 0;
    }

    private static void bridge(
            double[] hourly, double[] given, int from, int length, WeatherQuantity.Kind kind, boolean wraps) {
        int n = given.length;
        double before = at(given, from - 1, wraps);
        double after = at(given, from + length, wraps);
        for (int j = 0; j < length; j++) {
            double value = switch (kind) {
                case SUM -> 0;
                case DIRECTION -> Double.isNaN(before) ? after : before;
                case SUN -> fromDaysAround(given, from + j, wraps);
                case STATE -> {
                    double days = length > LONGEST_LINE_H ? fromDaysAround(given, from + j, wraps) : Double.NaN;
                    yield Double.isNaN(days) ? line(before, after, (j + 1.0) / (length + 1)) : days;
                }
            };
            hourly[(from + j) % n] = value;
        }
    }

    /** A straight line; level where only one end is given. */
    private static double line(double before, double after, double share) {
        if (Double.isNaN(before)) {
            return after;
        }
        return Double.isNaN(after) ? before : before + share * (after - before);
    }

    private static double fromDaysAround(double[] given, int hour, boolean wraps) {
        double before = Double.NaN;
        double after = Double.NaN;
        for (int day = 1; day <= 1 + LONGEST_H / DAY_H; day++) {
            before = Double.isNaN(before) ? at(given, hour - day * DAY_H, wraps) : before;
            after = Double.isNaN(after) ? at(given, hour + day * DAY_H, wraps) : after;
        }
        return Arrays.stream(new double[] {before, after})
                .filter(value -> !Double.isNaN(value))
                .average()
                .orElse(Double.NaN);
    }

    private static double at(double[] given, int hour, boolean wraps) {
        if (wraps) {
            return given[Math.floorMod(hour, given.length)];
        }
        return hour < 0 || hour >= given.length ? Double.NaN : given[hour];
    }
}
