package oakum.physics.weather;

import static oakum.physics.moistair.MoistAir.ZERO_C_IN_K;

/** How cold the sky looks to a surface: the temperature of a black hemisphere that would radiate as much. */
public final class SkyTemperature {
    /** Stefan-Boltzmann constant, W/(m² K⁴). */
    public static final double STEFAN_BOLTZMANN = 5.670374e-8;

    private SkyTemperature() {}

    /**
     * Emissivity of the sky (Clark and Allen 1978 with the clouds of Walton 1983; from memory), at most 1.
     *
     * @param dewPointC of the air near the ground
     * @param cloudFraction 0 clear to 1 overcast
     */
    public static double emissivity(double dewPointC, double cloudFraction) {
        double n = 10 * cloudFraction;
        double clear = 0.787 + 0.764 * Math.log((dewPointC + ZERO_C_IN_K) / 273);
        return Math.min(1, clear * (1 + n * (0.0224 + n * (-0.0035 + 0.00028 * n))));
    }

    /**
     * Emissivity of a clear sky (Berdahl and Martin 1984; from memory).
     *
     * @param dewPointC of the air near the ground
     * @param solarHour 0 to 24, 12 at noon
     */
    public static double clearEmissivity(double dewPointC, double solarHour) {
        double t = dewPointC / 100;
        return 0.711 + t * (0.56 + 0.73 * t) + 0.013 * Math.cos(2 * Math.PI * solarHour / 24);
    }

    /** Sky temperature, °C, of an emissivity and an air temperature. */
    public static double ofEmissivityC(double emissivity, double airTemperatureC) {
        return Math.pow(emissivity, 0.25) * (airTemperatureC + ZERO_C_IN_K) - ZERO_C_IN_K;
    }

    /** Sky temperature, °C, of long-wave radiation received on level ground, W/m². */
    public static double ofLongWaveC(double longWaveWPerM2) {
        return Math.pow(longWaveWPerM2 / STEFAN_BOLTZMANN, 0.25) - ZERO_C_IN_K;
    }

    /** Long-wave radiation, W/m², of a sky temperature in °C. */
    public static double longWaveWPerM2(double skyTemperatureC) {
        return STEFAN_BOLTZMANN * Math.pow(skyTemperatureC + ZERO_C_IN_K, 4);
    }

    /** Crude clear sky from the air temperature alone, °C (Swinbank 1963; from memory). */
    public static double clearFromAirC(double airTemperatureC) {
        return 0.0552 * Math.pow(airTemperatureC + ZERO_C_IN_K, 1.5) - ZERO_C_IN_K;
    }
}
