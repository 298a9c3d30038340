package oakum.physics.rainscreen;

import java.util.function.DoubleUnaryOperator;
import oakum.physics.moistair.MoistAir;
import oakum.physics.numerics.Roots;

/**
 * A ventilated cavity in balance: the air that sun and house warm drives its own flow, the wind helps or hinders, and
 * the flow carries the warmth away.
 *
 * @param flow the airflow and its losses
 * @param upward whether the air rises
 * @param drivePa stack and wind together, the amount
 * @param meanC mean temperature of the cavity air
 * @param exitC temperature at which it leaves
 */
public record CavityAir(CavityFlow flow, boolean upward, double drivePa, double meanC, double exitC) {
    private static final double HEAT_CAPACITY_J_PER_KG_K = 1005;
    private static final double PRECISION = 1e-11;

    /** With the viscosity of air at the mean temperature of the cavity at rest and outdoors. */
    public static CavityAir balance(Cavity cavity, CavityClimate climate) {
        return balance(cavity, climate, MoistAir.viscosityPaS((climate.outdoorC() + climate.restC()) / 2));
    }

    /**
     * The balance of flow and temperature. Where wind and stack oppose each other more than one may exist; the one that
     * air at rest would begin is given.
     *
     * @param viscosityPaS of the air, above 0
     */
    public static CavityAir balance(Cavity cavity, CavityClimate climate, double viscosityPaS) {
        double restC = climate.restC();
        double atRest = drivePa(cavity, climate, restC);
        if (atRest == 0 || cavity.leastFreeM2PerM() <= 0) {
            return new CavityAir(CavityFlow.under(cavity, 0, 1, viscosityPaS), true, 0, restC, restC);
        }
        int sign = atRest < 0 ? -1 : 1;
        DoubleUnaryOperator surplus = q -> {
            Along along = Along.of(cavity, climate, q);
            return sign * drivePa(cavity, climate, along.meanC())
                    - CavityFlow.lossPa(cavity, q, along.densityKgPerM3(), viscosityPaS);
        };
        double most = 1e-6;
        while (surplus.applyAsDouble(most) > 0) {
            most *= 4;
        }
        Along along = Along.of(cavity, climate, Roots.bracketed(surplus, 0, most, PRECISION));
        double drive = Math.max(sign * drivePa(cavity, climate, along.meanC()), 0);
        return new CavityAir(
                CavityFlow.under(cavity, drive, along.densityKgPerM3(), viscosityPaS),
                sign > 0,
                drive,
                along.meanC(),
                along.exitC());
    }

    private static double drivePa(Cavity cavity, CavityClimate climate, double meanC) {
        return climate.windPa()
                + CavityFlow.stackPa(climate.outdoorC(), meanC, cavity.heightM(), climate.pressureFraction());
    }

    /**
     * The air along the cavity at one flow.
     *
     * @param meanC mean of its height
     * @param exitC where it leaves
     * @param densityKgPerM3 at the mean of outdoors and cavity
     */
    private record Along(double meanC, double exitC, double densityKgPerM3) {
        /** Density changes by a hundredth in three kelvin, so that each round brings two more digits. */
        private static final int ROUNDS = 6;

        static Along of(Cavity cavity, CavityClimate climate, double airflow) {
            double restC = climate.restC();
            double fromRestK = climate.outdoorC() - restC;
            double meanC = restC;
            double exitC = restC;
            double density = density(climate, meanC);
            for (int i = 0; i < ROUNDS && airflow > 0; i++) {
                // height over which the air comes near its rest temperature, as a share of the cavity's height
                double reach = density
                        * HEAT_CAPACITY_J_PER_KG_K
                        * airflow
                        / ((climate.outerWPerM2K() + climate.innerWPerM2K()) * cavity.heightM());
                meanC = restC + fromRestK * reach * -Math.expm1(-1 / reach);
                exitC = restC + fromRestK * Math.exp(-1 / reach);
                density = density(climate, meanC);
            }
            return new Along(meanC, exitC, density);
        }

        private static double density(CavityClimate climate, double meanC) {
            return climate.pressureFraction() * CavityFlow.densityKgPerM3((climate.outdoorC() + meanC) / 2);
        }
    }
}
