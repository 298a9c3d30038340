package oakum.physics.rainscreen;

import oakum.physics.moistair.MoistAir;
import oakum.physics.numerics.Roots;

/**
 * Air that moves through a cavity under a pressure: laminar between plates with the openings in series, turbulent where
 * that costs more.
 *
 * @param airflowM3PerSM for each metre of width, 0 or more
 * @param cavityPa loss along the cavity
 * @param openingsPa loss in both openings
 * @param velocityMPerS mean in the free part of the cavity
 * @param reynolds on twice the depth
 */
public record CavityFlow(
        double airflowM3PerSM, double cavityPa, double openingsPa, double velocityMPerS, double reynolds) {
    private static final CavityFlow STILL = new CavityFlow(0, 0, 0, 0, 0);
    private static final double DENSITY_KELVIN_KG_PER_M3 = 353;
    private static final double GRAVITY_M_PER_S2 = 9.81;
    private static final double PRECISION = 1e-12;

    /** Density of air at sea level as this trade takes it, 353/T kg/m³. */
    public static double densityKgPerM3(double temperatureC) {
        return DENSITY_KELVIN_KG_PER_M3 / (temperatureC + MoistAir.ZERO_C_IN_K);
    }

    /**
     * Pressure of a column of warm air against the air outdoors; negative where the cavity is the colder one.
     *
     * @param pressureFraction air pressure of the place over that at sea level
     */
    public static double stackPa(double outdoorC, double cavityC, double heightM, double pressureFraction) {
        return pressureFraction * (densityKgPerM3(outdoorC) - densityKgPerM3(cavityC)) * GRAVITY_M_PER_S2 * heightM;
    }

    /**
     * Pressure of the wind between the two openings.
     *
     * @param coefficientDifference of the pressure coefficients, bottom less top
     */
    public static double windPa(double coefficientDifference, double densityKgPerM3, double windMPerS) {
        return coefficientDifference * 0.5 * densityKgPerM3 * windMPerS * windMPerS;
    }

    /**
     * The flow that a pressure drives.
     *
     * @param drivePa 0 or more
     * @param densityKgPerM3 of the cavity air, above 0
     * @param viscosityPaS of the cavity air, above 0
     */
    public static CavityFlow under(Cavity cavity, double drivePa, double densityKgPerM3, double viscosityPaS) {
        if (!(drivePa > 0) || cavity.leastFreeM2PerM() <= 0) {
            return STILL;
        }
        double a = openingsFactor(cavity, densityKgPerM3);
        double c = laminarFactor(cavity, viscosityPaS);
        // the positive root of a Q² + c Q = Δp, written so that a small a loses no digits
        double laminar = 2 * drivePa / (c + Math.sqrt(c * c + 4 * a * drivePa));
        double flow = laminar;
        if (turbulentPa(cavity, laminar, densityKgPerM3, viscosityPaS) > c * laminar) {
            flow = Roots.bracketed(
                    q -> lossPa(cavity, q, densityKgPerM3, viscosityPaS) - drivePa, 0, laminar, PRECISION);
        }
        double velocity = flow / (cavity.freeFraction() * cavity.depthM());
        return new CavityFlow(
                flow,
                cavityPa(cavity, flow, densityKgPerM3, viscosityPaS),
                a * flow * flow,
                velocity,
                reynolds(cavity, velocity, densityKgPerM3, viscosityPaS));
    }

    /** The pressure that a flow through the cavity and both openings needs. */
    static double lossPa(Cavity cavity, double flow, double densityKgPerM3, double viscosityPaS) {
        return openingsFactor(cavity, densityKgPerM3) * flow * flow
                + cavityPa(cavity, flow, densityKgPerM3, viscosityPaS);
    }

    private static double cavityPa(Cavity cavity, double flow, double densityKgPerM3, double viscosityPaS) {
        return Math.max(
                laminarFactor(cavity, viscosityPaS) * flow, turbulentPa(cavity, flow, densityKgPerM3, viscosityPaS));
    }

    private static double openingsFactor(Cavity cavity, double densityKgPerM3) {
        double bottom = cavity.dischargeCoefficient() * cavity.bottomFreeM2PerM();
        double top = cavity.dischargeCoefficient() * cavity.topFreeM2PerM();
        return 0.5 * densityKgPerM3 * (1 / (bottom * bottom) + 1 / (top * top));
    }

    private static double laminarFactor(Cavity cavity, double viscosityPaS) {
        return 12 * viscosityPaS * cavity.heightM() / (cavity.freeFraction() * Math.pow(cavity.depthM(), 3));
    }

    /** Blasius; below a Reynolds number of about 2000 it is less than the laminar loss and does not count. */
    private static double turbulentPa(Cavity cavity, double flow, double densityKgPerM3, double viscosityPaS) {
        double velocity = flow / (cavity.freeFraction() * cavity.depthM());
        double re = reynolds(cavity, velocity, densityKgPerM3, viscosityPaS);
        if (re <= 0) {
            return 0;
        }
        double friction = 0.3164 * Math.pow(re, -0.25);
        return friction * cavity.heightM() / (2 * cavity.depthM()) * 0.5 * densityKgPerM3 * velocity * velocity;
    }

    private static double reynolds(Cavity cavity, double velocity, double densityKgPerM3, double viscosityPaS) {
        return velocity * 2 * cavity.depthM() * densityKgPerM3 / viscosityPaS;
    }
}
