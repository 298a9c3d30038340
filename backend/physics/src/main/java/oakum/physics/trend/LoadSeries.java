package oakum.physics.trend;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oakum.physics.numerics.Median;
import oakum.physics.numerics.TheilSen;

/**
 * Filter load over days.
 *
 * <p>A slope needs at least {@value #LEAST_VALUES} values over at least {@value #LEAST_SPAN_D} days; shorter stretches
 * tell scatter, not filling.
 */
public final class LoadSeries {
    /** Readings of one day that make a value. */
    public static final int LEAST_READINGS_A_DAY = 20;

    static final double RECENT_D = 28;
    static final int LEAST_VALUES = 4;
    static final double LEAST_SPAN_D = 14;

    private static final double SUDDEN_SHARE = 0.75;
    private static final double SUDDEN_WITHIN_D = 2;

    private final double[] days;
    private final double[] loads;

    /**
     * A series.
     *
     * @param days in rising order
     * @param loads as many
     */
    LoadSeries(double[] days, double[] loads) {
        this.days = days.clone();
        this.loads = loads.clone();
    }

    /** When a filter began to fill faster, by index into the series. */
    record Early(int firstIndex, int breakIndex, double slopeBefore, double slopeSince) {}

    /**
     * The value of a day.
     *
     * @param readings filter loads of one day, taken while the fan was steady
     * @return their median, or empty with fewer than twenty
     */
    public static OptionalDouble dailyMedian(List<Double> readings) {
        return readings.size() < LEAST_READINGS_A_DAY
                ? OptionalDouble.empty()
                : OptionalDouble.of(Median.of(
                        readings.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    int size() {
        return days.length;
    }

    double day(int index) {
        return days[index];
    }

    double load(int index) {
        return loads[index];
    }

    double[] days() {
        return days.clone();
    }

    double[] loads() {
        return loads.clone();
    }

    /** The robust line over all values up to one of them. */
    Optional<TheilSen> life(int upTo) {
        return line(0, upTo);
    }

    /** The robust line over the 28 days up to a value. */
    Optional<TheilSen> recent(int upTo) {
        int from = upTo;
        while (from > 0 && days[from - 1] >= days[upTo] - RECENT_D) {
            from--;
        }
        return line(from, upTo);
    }

    private Optional<TheilSen> line(int from, int to) {
        return to - from + 1 < LEAST_VALUES || days[to] - days[from] < LEAST_SPAN_D
                ? Optional.empty()
                : Optional.of(robust(from, to));
    }

    private TheilSen robust(int from, int to) {
        return TheilSen.of(
                Arrays.copyOfRange(days, from, to + 1), Arrays.copyOfRange(loads, from, to + 1), TheilSen.Z_80);
    }

    /**
     * The latest stretch in which the recent slope stood above so many times the life slope for so many days. It stays
     * found while the filter is in place, since the life slope catches up with every week that passes.
     *
     * @param ratio how many times the life slope
     * @param afterDays how long it must last
     * @param leastSlope a slope that is no trouble at all, so that the scatter of a filter that hardly fills raises nothing
     */
    Optional<Early> fillingEarly(double ratio, double afterDays, double leastSlope) {
        int first = -1;
        int found = -1;
        for (int i = 0; i < days.length; i++) {
            if (!steeper(i, ratio, leastSlope)) {
                first = -1;
                continue;
            }
            first = first < 0 ? i : first;
            if (days[i] - days[first] >= afterDays) {
                found = first;
            }
        }
        return found < 0 ? Optional.empty() : broken(found);
    }

    private boolean steeper(int i, double ratio, double leastSlope) {
        if (days[i] - days[0] <= RECENT_D) {
            return false;
        }
        Optional<TheilSen> recent = recent(i);
        // the short fit first: most days it spares the long one
        if (recent.isEmpty()
                || recent.get().slope() <= leastSlope
                || recent.get().lowerSlope() <= 0) {
            return false;
        }
        return life(i).map(life -> recent.get().slope() > ratio * Math.max(0, life.slope()))
                .orElse(false);
    }

    /** Splits the series where two robust lines leave the least distance to the values. */
    private Optional<Early> broken(int noticed) {
        Early best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 3; i <= noticed && i + 3 <= days.length; i++) {
            if (days[i] < days[noticed] - RECENT_D) {
                continue;
            }
            TheilSen before = robust(0, i - 1);
            TheilSen since = robust(i, days.length - 1);
            double distance = distance(before, 0, i - 1) + distance(since, i, days.length - 1);
            if (distance < least) {
                least = distance;
                best = new Early(noticed, i, before.slope(), since.slope());
            }
        }
        return Optional.ofNullable(best);
    }

    private double distance(TheilSen line, int from, int to) {
        double sum = 0;
        for (int i = from; i <= to; i++) {
            sum += Math.abs(loads[i] - line.at(days[i]));
        }
        return sum;
    }

    /** The latest value at which the load had fallen by a quarter within a day or two and stayed down; −1 for none. */
    int suddenlyEasy() {
        for (int i = days.length - 1; i > 0; i--) {
            double bound = SUDDEN_SHARE * loads[i - 1];
            boolean fell = days[i] - days[i - 1] <= SUDDEN_WITHIN_D && loads[i] <= bound;
            if (fell && (i == days.length - 1 || loads[i + 1] <= bound)) {
                return i;
            }
        }
        return -1;
    }

    /** The first value since which the load never fell below a bound again; −1 where it stands below it. */
    int above(double bound) {
        int first = -1;
        for (int i = days.length - 1; i >= 0 && loads[i] >= bound; i--) {
            first = i;
        }
        return first;
    }
}
