package oakum.physics.filtration;

/**
 * Pressure drop of a clean filter over its nominal face velocity, {@code Δp = a v + b (ρ/1.2) v²}: the first part is drag
 * in the fibres, which does not feel the air's density, the second is inertia, which scales with it (common practice, no
 * published source for the split).
 *
 * @param linearPaSPerM a, Pa per m/s, at least 0
 * @param squarePaS2PerM2 b at 1.2 kg/m³, Pa per (m/s)², at least 0
 */
public record CleanCurve(double linearPaSPerM, double squarePaS2PerM2) {
    /** Density at which rated curves are printed, kg/m³. */
    public static final double RATED_DENSITY_KG_PER_M3 = 1.2;

    /**
     * The drop at a velocity.
     *
     * @param velocityMPerS airflow over the nominal face area, at least 0
     * @param densityKgPerM3 of the air, above 0
     */
    public double dropPa(double velocityMPerS, double densityKgPerM3) {
        return linearPaSPerM * velocityMPerS
                + squarePaS2PerM2 * densityKgPerM3 / RATED_DENSITY_KG_PER_M3 * velocityMPerS * velocityMPerS;
    }
}
