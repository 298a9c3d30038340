package oakum.physics.moistair;

import static oakum.physics.moistair.MoistAir.ZERO_C_IN_K;

/**
 * Saturation pressure as the standards of building moisture compute it (ISO 13788 Annex E, EN 15026), and what follows
 * from it: dew and frost point, relative humidity, suction. Against {@link MoistAir} it lies up to 0.25 % low from −10
 * to 60 °C and 1 % low at −30 °C; it is kept apart, so that results can be held against those standards.
 *
 * <p>Below 0 °C the plain methods count over ice, as ISO 13788 does; weather services count over water, see {@link
 * #pressureOverWaterPa}. The equations are for −40 to 60 °C; the methods do not check that range, so that they may stand
 * in inner loops.
 */
public final class Iso13788Saturation {
    /** Gas constant of water vapour, J/(kg K) (EN 15026, from memory). */
    public static final double VAPOUR_GAS_CONSTANT_J_PER_KG_K = 461.5;

    /** Density of liquid water, kg/m³. */
    public static final double WATER_DENSITY_KG_PER_M3 = 1000;

    private static final double AT_ZERO_PA = 610.5;
    private static final double WATER_FACTOR = 17.269;
    private static final double WATER_OFFSET_K = 237.3;
    private static final double ICE_FACTOR = 21.875;
    private static final double ICE_OFFSET_K = 265.5;

    private Iso13788Saturation() {}

    /**
     * Saturation pressure, over ice below 0 °C (ISO 13788 eq. E.7 and E.8).
     *
     * @param temperatureC −40 to 60
     */
    public static double pressurePa(double temperatureC) {
        return temperatureC < 0
                ? AT_ZERO_PA * Math.exp(ICE_FACTOR * temperatureC / (ICE_OFFSET_K + temperatureC))
                : pressureOverWaterPa(temperatureC);
    }

    /**
     * Saturation pressure over water, supercooled below 0 °C: what the relative humidity of weather files and most
     * sensors is counted against. Vapour pressure of such a reading is its relative humidity times this.
     *
     * @param temperatureC −40 to 60
     */
    public static double pressureOverWaterPa(double temperatureC) {
        return AT_ZERO_PA * Math.exp(WATER_FACTOR * temperatureC / (WATER_OFFSET_K + temperatureC));
    }

    /** Saturation pressure with a choice of surface below freezing. */
    public static double pressurePa(double temperatureC, BelowFreezing convention) {
        return convention == BelowFreezing.OVER_WATER ? pressureOverWaterPa(temperatureC) : pressurePa(temperatureC);
    }

    /** Slope of {@link #pressurePa(double)}, Pa/K. */
    public static double slopePaPerK(double temperatureC) {
        return pressurePa(temperatureC) * relativeSlopePerK(temperatureC);
    }

    /** Slope of {@link #pressurePa(double)} as a fraction of it, per K: for loops that have the pressure already. */
    public static double relativeSlopePerK(double temperatureC) {
        double factor = temperatureC < 0 ? ICE_FACTOR : WATER_FACTOR;
        double offset = temperatureC < 0 ? ICE_OFFSET_K : WATER_OFFSET_K;
        double sum = offset + temperatureC;
        return factor * offset / (sum * sum);
    }

    /**
     * Dew point, which below freezing is the frost point (ISO 13788 eq. E.9 and E.10).
     *
     * @param vapourPressurePa above 0
     * @throws IllegalArgumentException for dry air, which has none
     */
    public static double dewPointC(double vapourPressurePa) {
        if (!(vapourPressurePa > 0)) {
            throw new IllegalArgumentException("no dew point at a vapour pressure of " + vapourPressurePa + " Pa");
        }
        double ln = Math.log(vapourPressurePa / AT_ZERO_PA);
        return ln < 0 ? ICE_OFFSET_K * ln / (ICE_FACTOR - ln) : WATER_OFFSET_K * ln / (WATER_FACTOR - ln);
    }

    /** Relative humidity as a fraction, over ice below 0 °C; above 1 where the air is supersaturated over ice. */
    public static double relativeHumidity(double temperatureC, double vapourPressurePa) {
        return vapourPressurePa / pressurePa(temperatureC);
    }

    /** Vapour in a cubic metre of air, kg/m³. */
    public static double vapourDensityKgPerM3(double temperatureC, double vapourPressurePa) {
        return vapourPressurePa / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * (temperatureC + ZERO_C_IN_K));
    }

    /**
     * Suction of pore water in balance with air (Kelvin's equation), Pa.
     *
     * @param temperatureC −40 to 60
     * @param relativeHumidityFraction above 0 to 1
     */
    public static double suctionPa(double temperatureC, double relativeHumidityFraction) {
        return -WATER_DENSITY_KG_PER_M3
                * VAPOUR_GAS_CONSTANT_J_PER_KG_K
                * (temperatureC + ZERO_C_IN_K)
                * Math.log(relativeHumidityFraction);
    }
}
