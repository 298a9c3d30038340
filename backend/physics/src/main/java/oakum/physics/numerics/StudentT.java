package oakum.physics.numerics;

/** Student's t distribution, as far as confidence intervals need it. */
public final class StudentT {
    private StudentT() {}

    /**
     * The value below which t lies with the given probability: the inverse of the distribution function, found by
     * bracketing on the regularised incomplete beta function (Abramowitz and Stegun 26.7.1, 26.5.8).
     *
     * @param probability above 0.5 and below 1
     * @param degreesOfFreedom at least 1
     */
    public static double quantile(double probability, int degreesOfFreedom) {
        if (!(probability > 0.5 && probability < 1) || degreesOfFreedom < 1) {
            throw new IllegalArgumentException(
                    "probability " + probability + ", degrees of freedom " + degreesOfFreedom);
        }
        double high = 1;
        while (cumulative(high, degreesOfFreedom) < probability) {
            high *= 2;
        }
        double top = high;
        return Roots.bracketed(t -> cumulative(t, degreesOfFreedom) - probability, 0, top, 1e-12 * top);
    }

    /** The probability that t is at most {@code t}, for {@code t >= 0}. */
    static double cumulative(double t, int degreesOfFreedom) {
        double x = degreesOfFreedom / (degreesOfFreedom + t * t);
        return 1 - 0.5 * regularisedBeta(x, 0.5 * degreesOfFreedom, 0.5);
    }

    private static double regularisedBeta(double x, double a, double b) {
        if (x <= 0) {
            return 0;
        }
        if (x >= 1) {
            return 1;
        }
        double front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
        return x < (a + 1) / (a + b + 2)
                ? front * continuedFraction(x, a, b) / a
                : 1 - front * continuedFraction(1 - x, b, a) / b;
    }

    /** Abramowitz and Stegun 26.5.8 by the modified Lentz method. */
    private static double continuedFraction(double x, double a, double b) {
        double tiny = 1e-300;
        double c = 1;
        double d = 1 / nonZero(1 - (a + b) * x / (a + 1), tiny);
        double h = d;
        for (int m = 1; m <= 500; m++) {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / nonZero(1 + even * d, tiny);
            c = nonZero(1 + even / c, tiny);
            h *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / nonZero(1 + odd * d, tiny);
            c = nonZero(1 + odd / c, tiny);
            double delta = d * c;
            h *= delta;
            if (Math.abs(delta - 1) < 1e-15) {
                return h;
            }
        }
        throw new IllegalStateException("incomplete beta function did not converge");
    }

    private static double nonZero(double value, double tiny) {
        return Math.abs(value) < tiny ? tiny : value;
    }

    /** Lanczos approximation (g = 7, n = 9), relative error below 1e-14 for positive arguments. */
    private static double logGamma(double x) {
        double[] g = {
            0.99999999999980993,
            676.5203681218851,
            -1259.1392167224028,
            771.32342877765313,
            -176.61502916214059,
            12.507343278686905,
            -0.13857109526572012,
            9.9843695780195716e-6,
            1.5056327351493116e-7
        };
        if (x < 0.5) {
            return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
        }
        double y = x - 1;
        double sum = g[0];
        for (int i = 1; i < g.length; i++) {
            sum += g[i] / (y + i);
        }
        double t = y + 7.5;
        return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
    }
}
