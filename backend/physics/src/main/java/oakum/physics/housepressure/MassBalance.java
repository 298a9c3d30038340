package oakum.physics.housepressure;

import java.util.function.DoubleUnaryOperator;
import oakum.physics.numerics.Roots;

/** Finds the depressurisation at which as much air comes in as goes out. */
final class MassBalance {
    /** Greatest part of the flows that may be left over. */
    static final double GREATEST_ERROR = 1e-9;

    /** Flows below this are as good as none; the error is held against at least it. */
    private static final double LEAST_SCALE_KG_PER_S = 1e-3;

    private static final double FARTHEST_ROOT_PA = 1e6;

    private MassBalance() {}

    /**
     * Solves for the depressurisation Δp, positive where the house is below outdoors.
     *
     * @param surplusKgPerS mass flow in less mass flow out over Δp; continuous, never falling
     * @param scaleKgPerS size of the flows, against which the remaining error is held
     * @throws IllegalStateException where no pressure balances the flows, or they do not close within
     *     {@link #GREATEST_ERROR} of the scale
     */
    static double depressurisationPa(DoubleUnaryOperator surplusKgPerS, double scaleKgPerS) {
        // in the signed root of the pressure the flows have no infinite slope at 0
        DoubleUnaryOperator inRoot = x -> surplusKgPerS.applyAsDouble(x * Math.abs(x));
        double atZero = inRoot.applyAsDouble(0);
        if (atZero == 0) {
            return 0;
        }
        double far = atZero < 0 ? 1 : -1;
        while (inRoot.applyAsDouble(far) * atZero > 0) {
            far *= 2;
            if (Math.abs(far) > FARTHEST_ROOT_PA) {
                throw new IllegalStateException("no house pressure balances the flows: " + atZero + " kg/s at 0 Pa, "
                        + inRoot.applyAsDouble(far) + " kg/s at " + far * Math.abs(far) + " Pa");
            }
        }
        double root = Roots.bracketed(inRoot, 0, far, 1e-15);
        double error = Math.abs(inRoot.applyAsDouble(root));
        if (!(error <= GREATEST_ERROR * Math.max(LEAST_SCALE_KG_PER_S, scaleKgPerS))) {
            throw new IllegalStateException("the house's mass balance does not close: " + error + " kg/s remain at "
                    + root * Math.abs(root) + " Pa");
        }
        return root * Math.abs(root);
    }
}
