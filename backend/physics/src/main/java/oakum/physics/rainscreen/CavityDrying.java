package oakum.physics.rainscreen;

import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.moistair.MoistAir;

/** What moving air takes from a wet wall at most, and what it is worth as a permeance. */
public final class CavityDrying {
    private static final double SECONDS_PER_DAY = 86_400;

    private CavityDrying() {}

    /**
     * Water that air at most carries off, from a surface that stays wet; spread over the height of the cavity.
     *
     * @param airflowM3PerSM for each metre of width, 0 or more
     * @param surfaceC temperature of the wet surface
     * @param vapourOutdoorKgPerM3 vapour in the air outdoors
     * @return kg for each square metre and day; 0 where the outdoor air holds more than the surface gives
     */
    public static double limitKgPerM2D(
            Cavity cavity, double airflowM3PerSM, double surfaceC, double vapourOutdoorKgPerM3) {
        double saturated = Iso13788Saturation.vapourDensityKgPerM3(surfaceC, Iso13788Saturation.pressurePa(surfaceC));
        return SECONDS_PER_DAY * airflowM3PerSM * Math.max(saturated - vapourOutdoorKgPerM3, 0) / cavity.heightM();
    }

    /**
     * The permeance, in parallel with the cladding's own, that an air change is worth.
     *
     * @return kg/(s m² Pa)
     */
    public static double permeanceKgPerSM2Pa(double airChangePerH, double depthM, double temperatureC) {
        return airChangePerH
                * depthM
                / (3600 * Iso13788Saturation.VAPOUR_GAS_CONSTANT_J_PER_KG_K * (temperatureC + MoistAir.ZERO_C_IN_K));
    }
}
