package oakum.physics.filtration;

/** Areas of a filter and the velocities through them. */
public final class FilterFace {
    /** How much smaller than its nominal size a filter usually is each way, m (half an inch; trade practice). */
    public static final double USUAL_UNDERSIZE_M = 0.0127;

    private FilterFace() {}

    /**
     * Media area of a pleated filter: each pleat is two slopes of the pleat depth over half a pitch.
     *
     * @param widthM across the pleats
     * @param heightM along the pleats
     * @param depthM of a pleat
     * @param pitchM from pleat to pleat, above 0
     */
    public static double mediaAreaM2(double widthM, double heightM, double depthM, double pitchM) {
        return widthM / pitchM * 2 * Math.hypot(pitchM / 2, depthM) * heightM;
    }

    /**
     * Pressure left for the filter: what the air handler can give outside itself, less everything else in its way.
     *
     * @param availablePa greatest external static of the air handler
     * @param otherPa supply, return, grilles, coil and accessories not inside its rating
     */
    public static double staticBudgetPa(double availablePa, double... otherPa) {
        double left = availablePa;
        for (double other : otherPa) {
            left -= other;
        }
        return left;
    }

    /**
     * Dust that a filter catches.
     *
     * @param concentrationUgPerM3 of the air before it
     * @param efficiencyFraction 0 to 1
     * @param airflowM3PerS through it
     * @param hours of running
     * @return grams
     */
    public static double caughtG(
            double concentrationUgPerM3, double efficiencyFraction, double airflowM3PerS, double hours) {
        return concentrationUgPerM3 * 1e-6 * efficiencyFraction * airflowM3PerS * 3600 * hours;
    }
}
