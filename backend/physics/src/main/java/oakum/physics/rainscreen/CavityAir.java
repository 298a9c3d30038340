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
        double atRest = drivePa(cavity, climate, 0);
        int sign = atRest < 0 ? -1 : 1;
        if (atRest == 0 || cavity.leastFreeM2PerM() <= 0) {
            return new CavityAir(
                    CavityFlow.under(cavity, 0, 1, viscosityPaS), true, 0, climate.restC(), climate.restC());
        }
        DoubleUnaryOperator surplus = q -> sign * drivePa(cavity, climate, q)
                - CavityFlow.lossPa(cavity, q, density(cavity, climate, q), viscosityPaS);
        double most = 1e-6;
        while (surplus.applyAsDouble(most) > 0) {
            most *= 4;
        }
        double airflow = Roots.bracketed(surplus, 0, most, PRECISION);
        double drive = sign * drivePa(cavity, climate, airflow);
        return new CavityAir(
                CavityFlow.under(cavity, drive, density(cavity, climate, airflow), viscosityPaS),
                sign > 0,
                Math.max(drive, 0),
                meanC(cavity, climate, airflow),
                exitC(cavity, climate, airflow));
    }

    private static double drivePa(Cavity cavity, CavityClimate climate, double airflow) {
        return climate.windPa()
                + CavityFlow.stackPa(
                        climate.outdoorC(),
                        meanC(cavity, climate, airflow),
                        cavity.heightM(),
                        climate.pressureFraction());
    }

    private static double density(Cavity cavity, CavityClimate climate, double airflow) {
        double between = (climate.outdoorC() + meanC(cavity, climate, airflow)) / 2;
        return climate.pressureFraction() * CavityFlow.densityKgPerM3(between);
    }

    /** Height over which the air comes near its rest temperature, as a share of the cavity's height. */
    private static double reach(Cavity cavity, CavityClimate climate, double airflow) {
        double density =
                climate.pressureFraction() * CavityFlow.densityKgPerM3((climate.outdoorC() + climate.restC()) / 2);
        return density
                * HEAT_CAPACITY_J_PER_KG_K
                * airflow
                / (climate.outerWPerM2K() + climate.innerWPerM2K())
                / cavity.heightM();
    }

    private static double meanC(Cavity cavity, CavityClimate climate, double airflow) {
        double reach = reach(cavity, climate, airflow);
        double rest = climate.restC();
        double left = reach > 0 ? reach * -Math.expm1(-1 / reach) : 0;
        return rest + (climate.outdoorC() - rest) * left;
    }

    private static double exitC(Cavity cavity, CavityClimate climate, double airflow) {
        double reach = reach(cavity, climate, airflow);
        double rest = climate.restC();
        return rest + (climate.outdoorC() - rest) * (reach > 0 ? Math.exp(-1 / reach) : 0);
    }
}
