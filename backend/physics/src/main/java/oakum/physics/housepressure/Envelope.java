package oakum.physics.housepressure;

/**
 * The leakage of the envelope, Q = Q50 (Δp/50)^n (ISO 9972 and ASTM E779, from memory; 1 to 100 Pa).
 *
 * @param q50M3PerS flow at 50 Pa, above 0
 * @param exponent n, 0.5 to 1
 */
record Envelope(double q50M3PerS, double exponent) {
    private static final double REFERENCE_PA = 50;

    /** Flow in m³/s at a pressure difference; odd in its argument. */
    double airflowM3PerS(double pressurePa) {
        return Math.copySign(q50M3PerS * Math.pow(Math.abs(pressurePa) / REFERENCE_PA, exponent), pressurePa);
    }

    /** The pressure difference at which the envelope passes a flow: the power law turned round. */
    double pressurePa(double airflowM3PerS) {
        return Math.copySign(REFERENCE_PA * Math.pow(Math.abs(airflowM3PerS) / q50M3PerS, 1 / exponent), airflowM3PerS);
    }
}
