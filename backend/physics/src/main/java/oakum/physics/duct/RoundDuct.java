package oakum.physics.duct;

import oakum.physics.numerics.Roots;

/**
 * A straight round duct with the fittings on it (Darcy-Weisbach with the Colebrook friction factor; ASHRAE Fundamentals
 * ch. 21, from memory).
 *
 * @param diameterM inner diameter, above 0
 * @param lengthM length, or equivalent length with the fittings counted in metres of duct; not negative
 * @param roughnessM absolute roughness, not negative, below the diameter
 * @param lossCoefficient sum of the loss coefficients of fittings, entry and exit, on the velocity pressure; not negative
 */
public record RoundDuct(double diameterM, double lengthM, double roughnessM, double lossCoefficient) {
    /** Below it flow is laminar, above it the Colebrook equation is used. */
    static final double CRITICAL_REYNOLDS = 2300;

    private static final int MOST_STEPS = 20;

    /** @throws IllegalArgumentException where a dimension is out of its range */
    public RoundDuct {
        if (!(diameterM > 0 && lengthM >= 0 && roughnessM >= 0 && roughnessM < diameterM && lossCoefficient >= 0)) {
            throw new IllegalArgumentException("no such duct: diameter " + diameterM + " m, length " + lengthM
                    + " m, roughness " + roughnessM + " m, loss coefficient " + lossCoefficient);
        }
    }

    public double areaM2() {
        return Math.PI / 4 * diameterM * diameterM;
    }

    /** Mean velocity in m/s of a flow in m³/s. */
    public double velocityMPerS(double airflowM3PerS) {
        return airflowM3PerS / areaM2();
    }

    /**
     * The pressure that a flow loses.
     *
     * @param airflowM3PerS actual flow at the density given, not negative
     * @param densityKgPerM3 density of the air, above 0
     * @param viscosityPaS dynamic viscosity of the air, above 0
     * @return Pa
     */
    public double dropPa(double airflowM3PerS, double densityKgPerM3, double viscosityPaS) {
        if (airflowM3PerS == 0) {
            return 0;
        }
        double velocity = velocityMPerS(airflowM3PerS);
        double reynolds = velocity * diameterM * densityKgPerM3 / viscosityPaS;
        double losses = frictionFactor(reynolds, roughnessM / diameterM) * lengthM / diameterM + lossCoefficient;
        return losses * densityKgPerM3 * velocity * velocity / 2;
    }

    /**
     * The flow that loses a given pressure: {@link #dropPa} turned round.
     *
     * @param dropPa not negative
     * @return m³/s at the density given
     * @throws IllegalStateException where the duct loses nothing at any flow
     */
    public double airflowM3PerS(double dropPa, double densityKgPerM3, double viscosityPaS) {
        if (dropPa == 0) {
            return 0;
        }
        if (lengthM == 0 && lossCoefficient == 0) {
            throw new IllegalStateException("a duct without length and losses has no flow of its own");
        }
        double high = areaM2();
        while (dropPa(high, densityKgPerM3, viscosityPaS) < dropPa) {
            high *= 2;
        }
        return Roots.bracketed(q -> dropPa(q, densityKgPerM3, viscosityPaS) - dropPa, 0, high, 1e-16 * high);
    }

    /**
     * Darcy friction factor: 64/Re for laminar flow, the Colebrook equation 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f))
     * above Re 2300.
     *
     * @param reynolds Reynolds number, above 0
     * @param relativeRoughness ε/D, 0 up to 0.5
     * @throws IllegalStateException where it has not converged after 20 steps
     */
    public static double frictionFactor(double reynolds, double relativeRoughness) {
        if (reynolds <= CRITICAL_REYNOLDS) {
            return 64 / reynolds;
        }
        // Newton's method for x = 1/√f: the equation is rising and concave in x, so it converges from Haaland's
        // estimate
        double x = -1.8 * Math.log10(Math.pow(relativeRoughness / 3.7, 1.11) + 6.9 / reynolds);
        for (int step = 0; step < MOST_STEPS; step++) {
            double inside = relativeRoughness / 3.7 + 2.51 * x / reynolds;
            double change = (x + 2 * Math.log10(inside)) / (1 + 2 * 2.51 / (Math.log(10) * reynolds * inside));
            x -= change;
            if (Math.abs(change) <= 1e-13 * x) {
                return 1 / (x * x);
            }
        }
        throw new IllegalStateException("the friction factor did not converge at Reynolds number " + reynolds
                + " and relative roughness " + relativeRoughness);
    }
}
