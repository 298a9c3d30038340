package oakum.physics.numerics;

import java.util.Arrays;

/** The median, which a few wild values do not move. */
public final class Median {
    private Median() {}

    /**
     * The middle value, or the mean of the two middle ones.
     *
     * @param values at least one, in any order; left as they are
     * @throws IllegalArgumentException where there is none
     */
    public static double of(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return ofSorted(sorted);
    }

    static double ofSorted(double[] sorted) {
        if (sorted.length == 0) {
            throw new IllegalArgumentException("the median of nothing");
        }
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
