package oakum.physics.airtightness;

/**
 * Flow through the leaks of a house over the pressure across them, {@code Q = C·Δp^n}.
 *
 * @param coefficientM3PerSPaN C, above 0
 * @param exponent n, 0.5 (openings) to 1 (fine cracks)
 */
public record PowerLaw(double coefficientM3PerSPaN, double exponent) {
    /** Density at which leakage areas are counted, kg/m³ (20 °C, sea level, dry). */
    public static final double REFERENCE_DENSITY_KG_PER_M3 = 1.2041;

    /** Discharge coefficient of a sharp-edged hole in the equivalent leakage area (CAN/CGSB-149.10, from memory). */
    public static final double SHARP_EDGE = 0.611;

    /**
     * The law through the flow at 50 Pa.
     *
     * @param airflow50M3PerS Q50, above 0
     * @param exponent n
     */
    public static PowerLaw ofAirflow50(double airflow50M3PerS, double exponent) {
        return new PowerLaw(airflow50M3PerS / Math.pow(50, exponent), exponent);
    }

    /**
     * Flow at a pressure; it has the sign of the pressure.
     *
     * @param pressurePa across the envelope
     */
    public double airflowM3PerS(double pressurePa) {
        return Math.copySign(coefficientM3PerSPaN * Math.pow(Math.abs(pressurePa), exponent), pressurePa);
    }

    /**
     * Pressure at which a flow passes; it has the sign of the flow.
     *
     * @param airflowM3PerS through the envelope
     */
    public double pressurePa(double airflowM3PerS) {
        return Math.copySign(Math.pow(Math.abs(airflowM3PerS) / coefficientM3PerSPaN, 1 / exponent), airflowM3PerS);
    }

    /**
     * Area of a nozzle without losses that passes the same flow at 4 Pa (effective leakage area; ASTM E779, from memory).
     */
    public double effectiveLeakageAreaM2() {
        return coefficientM3PerSPaN * Math.pow(4, exponent - 0.5) * Math.sqrt(REFERENCE_DENSITY_KG_PER_M3 / 2);
    }

    /**
     * Area of a sharp-edged hole that passes the same flow at 10 Pa (equivalent leakage area; CAN/CGSB-149.10, from
     * memory).
     */
    public double equivalentLeakageAreaM2() {
        return airflowM3PerS(10) / SHARP_EDGE * Math.sqrt(REFERENCE_DENSITY_KG_PER_M3 / 20);
    }
}
