package oakum.physics.numerics;

import java.util.function.DoubleUnaryOperator;

/** Roots of one equation. */
public final class Roots {
    private static final int MOST_STEPS = 200;

    private Roots() {}

    /**
     * A root between two points at which the function has different signs (Brent 1973, Algorithms for Minimization
     * without Derivatives, ch. 4: bisection, secant and inverse quadratic steps).
     *
     * @param f continuous on the bracket
     * @param low one end
     * @param high the other end
     * @param tolerance greatest distance from the root, in the unit of the argument, above 0
     * @throws IllegalArgumentException where the signs at the two ends are the same
     * @throws IllegalStateException where it has not converged after 200 steps
     */
    public static double bracketed(DoubleUnaryOperator f, double low, double high, double tolerance) {
        double a = low;
        double b = high;
        double fa = f.applyAsDouble(a);
        double fb = f.applyAsDouble(b);
        if (fa == 0) {
            return a;
        }
        if (fb == 0) {
            return b;
        }
        if (!(fa * fb < 0)) {
            throw new IllegalArgumentException(
                    "no change of sign between " + low + " (" + fa + ") and " + high + " (" + fb + ")");
        }
        double c = a;
        double fc = fa;
        double d = b - a;
        double e = d;
        for (int step = 0; step < MOST_STEPS; step++) {
            if (Math.abs(fc) < Math.abs(fb)) {
                a = b;
                b = c;
                c = a;
                fa = fb;
                fb = fc;
                fc = fa;
            }
            double near = 2 * Math.ulp(b) + 0.5 * tolerance;
            double m = 0.5 * (c - b);
            if (Math.abs(m) <= near || fb == 0) {
                return b;
            }
            if (Math.abs(e) < near || Math.abs(fa) <= Math.abs(fb)) {
                d = m;
                e = m;
            } else {
                double s = fb / fa;
                double p;
                double q;
                if (a == c) {
                    p = 2 * m * s;
                    q = 1 - s;
                } else {
                    double r = fb / fc;
                    q = fa / fc;
                    p = s * (2 * m * q * (q - r) - (b - a) * (r - 1));
                    q = (q - 1) * (r - 1) * (s - 1);
                }
                if (p > 0) {
                    q = -q;
                } else {
                    p = -p;
                }
                if (2 * p < Math.min(3 * m * q - Math.abs(near * q), Math.abs(e * q))) {
                    e = d;
                    d = p / q;
                } else {
                    d = m;
                    e = m;
                }
            }
            a = b;
            fa = fb;
            b += Math.abs(d) > near ? d : Math.copySign(near, m);
            fb = f.applyAsDouble(b);
            if (fb > 0 == fc > 0) {
                c = a;
                fc = fa;
                d = b - a;
                e = d;
            }
        }
        throw new IllegalStateException("no root found in " + MOST_STEPS + " steps between " + low + " and " + high);
    }
}
