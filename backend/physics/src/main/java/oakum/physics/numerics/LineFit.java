package oakum.physics.numerics;

import java.util.Arrays;

/**
 * A straight line through points by least squares, {@code y = intercept + slope x}, ordinary or weighted. Weights count
 * against each other only: they are scaled to a mean of one, so that the standard errors are those of points whose
 * variance is inverse to their weight.
 *
 * @param slope of the line
 * @param intercept at x = 0
 * @param count number of points
 * @param meanX weighted mean of x
 * @param sxx weighted sum of squared distances from {@code meanX}
 * @param residualSquares weighted sum of squared residuals
 * @param correlation Pearson's r
 */
public record LineFit(
        double slope,
        double intercept,
        int count,
        double meanX,
        double sxx,
        double residualSquares,
        double correlation) {

    /**
     * Fits with equal weights.
     *
     * @throws IllegalArgumentException with fewer than two different x
     */
    public static LineFit ordinary(double[] x, double[] y) {
        double[] one = new double[x.length];
        Arrays.fill(one, 1);
        return weighted(x, y, one);
    }

    /**
     * Fits with weights.
     *
     * @param weight of each point, not negative
     * @throws IllegalArgumentException with fewer than two different x, or with no weight at all
     */
    public static LineFit weighted(double[] x, double[] y, double[] weight) {
        if (x.length != y.length || x.length != weight.length) {
            throw new IllegalArgumentException("x, y and weight differ in length");
        }
        double sw = 0;
        double swx = 0;
        double swy = 0;
        for (int i = 0; i < x.length; i++) {
            sw += weight[i];
            swx += weight[i] * x[i];
            swy += weight[i] * y[i];
        }
        if (!(sw > 0)) {
            throw new IllegalArgumentException("the weights sum to " + sw);
        }
        double mx = swx / sw;
        double my = swy / sw;
        double scale = x.length / sw;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < x.length; i++) {
            double w = scale * weight[i];
            sxx += w * (x[i] - mx) * (x[i] - mx);
            sxy += w * (x[i] - mx) * (y[i] - my);
            syy += w * (y[i] - my) * (y[i] - my);
        }
        if (!(sxx > 0)) {
            throw new IllegalArgumentException("a line needs at least two different x");
        }
        double slope = sxy / sxx;
        double intercept = my - slope * mx;
        double residuals = 0;
        for (int i = 0; i < x.length; i++) {
            double r = y[i] - intercept - slope * x[i];
            residuals += scale * weight[i] * r * r;
        }
        double r = syy == 0 ? 1 : sxy / Math.sqrt(sxx * syy);
        return new LineFit(slope, intercept, x.length, mx, sxx, residuals, r);
    }

    /** Standard deviation of the residuals, with count − 2 degrees of freedom; 0 for two points. */
    public double residualDeviation() {
        return count > 2 ? Math.sqrt(residualSquares / (count - 2)) : 0;
    }

    /** Standard error of the fitted value at {@code x}. */
    public double standardErrorAt(double x) {
        return residualDeviation() * Math.sqrt(1.0 / count + (x - meanX) * (x - meanX) / sxx);
    }

    public double at(double x) {
        return intercept + slope * x;
    }
}
