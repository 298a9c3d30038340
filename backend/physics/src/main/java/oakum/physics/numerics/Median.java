package oakum.physics.numerics;

/** The median, which a few wild values do not move, and other order statistics. */
public final class Median {
    private Median() {}

    /**
     * The middle value, or the mean of the two middle ones.
     *
     * @param values at least one, in any order; left as they are
     * @throws IllegalArgumentException where there is none
     */
    public static double of(double... values) {
        return ofScratch(values.clone());
    }

    /** The same of values whose order may be disturbed. */
    static double ofScratch(double[] values) {
        if (values.length == 0) {
            throw new IllegalArgumentException("the median of nothing");
        }
        int half = values.length / 2;
        double upper = select(values, half);
        if (values.length % 2 == 1) {
            return upper;
        }
        double lower = values[0];
        for (int i = 1; i < half; i++) {
            lower = Math.max(lower, values[i]);
        }
        return (lower + upper) / 2;
    }

    /**
     * The value that would stand at a place if all were sorted (Hoare 1961, Communications of the ACM 4, 321–322,
     * algorithm 65: Find). Sorting would take several times as long, and a robust slope asks this of every pair of points.
     * Afterwards everything before the place is at most that value, everything behind at least.
     *
     * @param values reordered on the way
     * @param place from 0
     */
    static double select(double[] values, int place) {
        int low = 0;
        int high = values.length - 1;
        while (low < high) {
            double pivot = middleOf(values[low], values[low + (high - low) / 2], values[high]);
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double swapped = values[i];
                    values[i++] = values[j];
                    values[j--] = swapped;
                }
            }
            if (place <= j) {
                high = j;
            } else if (place >= i) {
                low = i;
            } else {
                break;
            }
        }
        return values[place];
    }

    private static double middleOf(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }
}
