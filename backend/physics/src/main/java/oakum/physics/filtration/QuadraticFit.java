package oakum.physics.filtration;

/**
 * Filter drop as {@code Δp = a Q + b Q²} by least squares through the origin with {@code a, b >= 0}: the physical form,
 * drag and inertia (common practice).
 *
 * @param a in the units of the points, at least 0
 * @param b in the units of the points, at least 0
 */
public record QuadraticFit(double a, double b) {
    /**
     * Fits through rated points; where the free fit would make one part negative, that part is 0 and the other is fitted
     * alone.
     *
     * @param flow above 0, at least two different
     * @param drop above 0
     * @throws IllegalArgumentException with fewer than two different flows
     */
    public static QuadraticFit through(double[] flow, double[] drop) {
        double q2 = 0;
        double q3 = 0;
        double q4 = 0;
        double qp = 0;
        double q2p = 0;
        for (int i = 0; i < flow.length; i++) {
            double q = flow[i];
            q2 += q * q;
            q3 += q * q * q;
            q4 += q * q * q * q;
            qp += q * drop[i];
            q2p += q * q * drop[i];
        }
        double determinant = q2 * q4 - q3 * q3;
        if (!(determinant > 1e-12 * q2 * q4)) {
            throw new IllegalArgumentException("a curve needs at least two different flows");
        }
        double a = (qp * q4 - q2p * q3) / determinant;
        double b = (q2p * q2 - qp * q3) / determinant;
        if (a < 0) {
            return new QuadraticFit(0, q2p / q4);
        }
        return b < 0 ? new QuadraticFit(qp / q2, 0) : new QuadraticFit(a, b);
    }

    public double drop(double flow) {
        return a * flow + b * flow * flow;
    }
}
