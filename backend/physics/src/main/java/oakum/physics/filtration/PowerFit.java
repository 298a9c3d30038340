package oakum.physics.filtration;

import oakum.physics.numerics.LineFit;

/**
 * Filter drop as a power of the flow, {@code Δp = a Q^b}, by least squares on the logarithms (common practice).
 *
 * @param a drop at flow 1, in the units of the points
 * @param b exponent: 1 for thick media at low velocity, 2 for an orifice, 1.2 to 1.6 usual
 */
public record PowerFit(double a, double b) {
    /** Exponents outside this range mean that the points are no filter's. */
    public static final double LEAST_EXPONENT = 0.9;

    public static final double GREATEST_EXPONENT = 2.1;

    /**
     * Fits through rated points.
     *
     * @param flow above 0, at least two different
     * @param drop above 0
     */
    public static PowerFit through(double[] flow, double[] drop) {
        double[] x = new double[flow.length];
        double[] y = new double[drop.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = Math.log(flow[i]);
            y[i] = Math.log(drop[i]);
        }
        LineFit line = LineFit.ordinary(x, y);
        return new PowerFit(Math.exp(line.intercept()), line.slope());
    }

    public double drop(double flow) {
        return a * Math.pow(flow, b);
    }

    /**
     * A measured drop brought to a reference flow, {@code Δp (Q_ref/Q)^b}: before any trend, since a fan whose flow falls
     * hides the loading.
     *
     * @param drop measured
     * @param flow at which it was measured, above 0
     * @param referenceFlow to bring it to
     * @param exponent of the clean filter
     */
    public static double atReference(double drop, double flow, double referenceFlow, double exponent) {
        return drop * Math.pow(referenceFlow / flow, exponent);
    }

    /** Whether the exponent is one that a filter can have. */
    public boolean plausible() {
        return b >= LEAST_EXPONENT && b <= GREATEST_EXPONENT;
    }
}
