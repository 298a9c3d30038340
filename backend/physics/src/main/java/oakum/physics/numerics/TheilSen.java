package oakum.physics.numerics;

import java.util.Arrays;

/**
 * A robust straight line: its slope is the median of the slopes of all pairs of points, with the distribution-free
 * interval of Sen (1968, Journal of the American Statistical Association 63, 1379–1389, with the correction for ties of
 * its eq. 2.6). Up to 29 % of wild points do not carry it away.
 *
 * @param slope median of the pairwise slopes
 * @param intercept median of {@code y − slope x}
 * @param lowerSlope lower end of the interval of the slope
 * @param upperSlope upper end of the interval of the slope
 * @param count number of points
 */
public record TheilSen(double slope, double intercept, double lowerSlope, double upperSlope, int count) {
    /** Two-sided 95 % point of the normal distribution. */
    public static final double Z_95 = 1.959964;

    /** Two-sided 80 % point of the normal distribution. */
    public static final double Z_80 = 1.281552;

    /**
     * Fits.
     *
     * @param x not all the same
     * @param y as many
     * @param z two-sided point of the normal distribution for the interval wanted, above 0
     * @throws IllegalArgumentException with fewer than two different x
     */
    public static TheilSen of(double[] x, double[] y, double z) {
        if (x.length != y.length) {
            throw new IllegalArgumentException("x and y differ in length");
        }
        int n = x.length;
        double[] slopes = new double[n * (n - 1) / 2];
        int pairs = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                if (x[i] != x[j]) {
                    slopes[pairs++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        if (pairs == 0) {
            throw new IllegalArgumentException("a line needs at least two different x");
        }
        slopes = Arrays.copyOf(slopes, pairs);
        double slope = Median.ofScratch(slopes);
        double[] offsets = new double[n];
        for (int i = 0; i < n; i++) {
            offsets[i] = y[i] - slope * x[i];
        }
        double spread = z * Math.sqrt(Math.max(0, (tieTerm(n) - ties(x) - ties(y)) / 18));
        long lower = Math.round((pairs - spread) / 2);
        long upper = Math.round((pairs + spread) / 2) + 1;
        return new TheilSen(
                slope,
                Median.ofScratch(offsets),
                Median.select(slopes, (int) Math.max(lower, 1) - 1),
                Median.select(slopes, (int) Math.min(upper, pairs) - 1),
                n);
    }

    private static double ties(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double sum = 0;
        int run = 1;
        for (int i = 1; i <= sorted.length; i++) {
            if (i < sorted.length && sorted[i] == sorted[i - 1]) {
                run++;
            } else {
                sum += tieTerm(run);
                run = 1;
            }
        }
        return sum;
    }

    private static double tieTerm(double n) {
        return n * (n - 1) * (2 * n + 5);
    }

    public double at(double x) {
        return intercept + slope * x;
    }
}
