package oakum.physics.weather;

import java.util.Arrays;

/** Values with their times, in any order. */
public final class TimedValues {
    private final long[] epochSecond;
    private final double[] values;

    /**
     * Copies both.
     *
     * @param epochSecond seconds since 1970, UTC
     * @param values one for each time, in the unit of their quantity
     * @throws IllegalArgumentException where they are not of one length
     */
    public TimedValues(long[] epochSecond, double[] values) {
        if (epochSecond.length != values.length) {
            throw new IllegalArgumentException(epochSecond.length + " times for " + values.length + " values");
        }
        this.epochSecond = epochSecond.clone();
        this.values = values.clone();
    }

    /** A copy of the times. */
    public long[] epochSecond() {
        return epochSecond.clone();
    }

    /** A copy of the values. */
    public double[] values() {
        return values.clone();
    }

    /** Grows as rows are read. */
    static final class Growing {
        private long[] times = new long[1024];
        private double[] values = new double[1024];
        private int size;

        void add(long epochSecond, double value) {
            if (size == times.length) {
                times = Arrays.copyOf(times, 2 * size);
                values = Arrays.copyOf(values, 2 * size);
            }
            times[size] = epochSecond;
            values[size] = value;
            size++;
        }

        int size() {
            return size;
        }

        TimedValues done() {
            return new TimedValues(Arrays.copyOf(times, size), Arrays.copyOf(values, size));
        }
    }
}
