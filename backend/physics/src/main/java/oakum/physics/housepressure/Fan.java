package oakum.physics.housepressure;

import org.jspecify.annotations.Nullable;

/**
 * An exhaust fan with its duct. With a shut-off pressure its curve is p = pmax (1 − (Q/Qmax)²), and duct and house load
 * it: pmax (1 − (Q/Qmax)²) = pd (Q/Qmax)² + Δp. Without one it moves its rated flow whatever the pressure.
 *
 * @param ratedM3PerS Qmax, the flow against no pressure; not negative
 * @param shutOffPa pmax, the pressure at no flow, above 0; or null where the fan's curve is not known
 * @param ductDropPa pd, what its duct loses at the rated flow; not negative
 */
record Fan(double ratedM3PerS, @Nullable Double shutOffPa, double ductDropPa) {
    /**
     * The flow at a depressurisation of the house; 0 where the house stalls the fan and its damper shuts.
     *
     * @param pressureFactor by how much the rated pressures change with the density of the air, above 0
     */
    double airflowM3PerS(double depressurisationPa, double pressureFactor) {
        if (shutOffPa == null) {
            return ratedM3PerS;
        }
        double left = shutOffPa * pressureFactor - depressurisationPa;
        return left <= 0 ? 0 : ratedM3PerS * Math.sqrt(left / ((shutOffPa + ductDropPa) * pressureFactor));
    }
}
