package oakum.physics.exposure;

import static oakum.physics.moistair.MoistAir.ZERO_C_IN_K;

import oakum.physics.weather.SkyTemperature;

/**
 * The air temperature that would heat a face as air, sun and sky do together. Written for a film that takes its radiative
 * part to the air temperature (ISO 6946 combined coefficients): the sky then only adds how much colder it is than the
 * air, and the ground is taken at air temperature.
 */
public final class EquivalentTemperature {
    private EquivalentTemperature() {}

    /**
     * Long-wave heat that a face at air temperature loses to the sky, W/m²; negative under a sky warmer than the air.
     *
     * @param emissivity of the face, 0 to 1
     * @param skyViewFraction how much of what it sees is sky, 0 to 1; 0.5 for a wall
     */
    public static double skyLossWPerM2(
            double airTemperatureC, double skyTemperatureC, double emissivity, double skyViewFraction) {
        return emissivity
                * skyViewFraction
                * SkyTemperature.STEFAN_BOLTZMANN
                * (Math.pow(airTemperatureC + ZERO_C_IN_K, 4) - Math.pow(skyTemperatureC + ZERO_C_IN_K, 4));
    }

    /**
     * Equivalent temperature, °C: T + (α I − loss)/h.
     *
     * @param absorbedWPerM2 sun that the face takes up, α I
     * @param skyLossWPerM2 see {@link #skyLossWPerM2}
     * @param filmWPerM2K combined coefficient of the outer film, above 0
     */
    public static double equivalentC(
            double airTemperatureC, double absorbedWPerM2, double skyLossWPerM2, double filmWPerM2K) {
        return airTemperatureC + (absorbedWPerM2 - skyLossWPerM2) / filmWPerM2K;
    }
}
