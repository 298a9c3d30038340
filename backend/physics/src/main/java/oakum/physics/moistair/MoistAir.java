package oakum.physics.moistair;

/**
 * Properties of moist air as an ideal mixture (ASHRAE Fundamentals ch. 1; saturation after Hyland and Wexler 1983).
 * Temperatures in °C, pressures in Pa, humidity ratios in kg of vapour per kg of dry air, enthalpies in J per kg of dry
 * air counted from 0 °C.
 *
 * <p>The equations are fitted for −100 to 200 °C (saturation) and −40 to 60 °C (enthalpy, volume, wet bulb). The methods
 * do not check that range, so that they may stand in inner loops; calculations check it at their edge. The enhancement
 * factor is left out: tabulated humidity ratios at saturation lie 0.4 to 1 % higher.
 */
public final class MoistAir {
    /** Pressure at sea level, Pa (ICAO standard atmosphere). */
    public static final double STANDARD_PRESSURE_PA = 101_325;

    /** 0 °C in kelvin. */
    public static final double ZERO_C_IN_K = 273.15;

    /** Water's triple point; below it the default saturation is over ice. */
    static final double TRIPLE_POINT_C = 0.01;

    /** Ratio of the molar masses of water and dry air. */
    static final double MOLAR_MASS_RATIO = 0.621945;

    private static final double DRY_AIR_GAS_CONSTANT = 287.042;
    private static final double VOLUME_PER_HUMIDITY = 1.607858;

    private static final double SATURATION_AT_TRIPLE_POINT_PA = saturationPressureOverWaterPa(TRIPLE_POINT_C);
    private static final double WATER_SATURATION_AT_ZERO_PA = saturationPressureOverWaterPa(0);

    private static final int MOST_STEPS = 60;
    private static final double STEP_TOLERANCE_K = 1e-9;

    /** Halley's steps shrink with the third power: after one this small the error is below 1e-7 K. */
    private static final double LAST_STEP_K = 0.005;

    private MoistAir() {}

    /**
     * Saturation pressure, over ice below 0.01 °C and over water from there.
     *
     * @param temperatureC −100 to 200
     */
    public static double saturationPressurePa(double temperatureC) {
        return temperatureC < TRIPLE_POINT_C
                ? saturationPressureOverIcePa(temperatureC)
                : saturationPressureOverWaterPa(temperatureC);
    }

    /** Saturation pressure with a choice of surface below freezing. */
    public static double saturationPressurePa(double temperatureC, BelowFreezing convention) {
        return convention == BelowFreezing.OVER_WATER
                ? saturationPressureOverWaterPa(temperatureC)
                : saturationPressurePa(temperatureC);
    }

    /** Saturation pressure over ice, −100 to 0 °C (ASHRAE Fundamentals ch. 1, eq. 5). */
    public static double saturationPressureOverIcePa(double temperatureC) {
        return Math.exp(lnOverIce(temperatureC + ZERO_C_IN_K));
    }

    /** Saturation pressure over water, 0 to 200 °C, and over supercooled water below (ASHRAE Fundamentals ch. 1, eq. 6). */
    public static double saturationPressureOverWaterPa(double temperatureC) {
        return Math.exp(lnOverWater(temperatureC + ZERO_C_IN_K));
    }

    private static double lnOverIce(double t) {
        return -5.6745359e3 / t
                + 6.3925247
                + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - 9.484024e-13 * t)))
                + 4.1635019 * Math.log(t);
    }

    private static double slopeOverIce(double t) {
        double inverse = 1 / t;
        return inverse * (5.6745359e3 * inverse + 4.1635019)
                - 9.677843e-3
                + t * (2 * 6.2215701e-7 + t * (3 * 2.0747825e-9 - 4 * 9.484024e-13 * t));
    }

    private static double lnOverWater(double t) {
        return -5.8002206e3 / t
                + 1.3914993
                + t * (-4.8640239e-2 + t * (4.1764768e-5 - 1.4452093e-8 * t))
                + 6.5459673 * Math.log(t);
    }

    private static double slopeOverWater(double t) {
        double inverse = 1 / t;
        return inverse * (5.8002206e3 * inverse + 6.5459673)
                - 4.8640239e-2
                + t * (2 * 4.1764768e-5 - 3 * 1.4452093e-8 * t);
    }

    /**
     * Humidity ratio of air with a given vapour pressure.
     *
     * @param vapourPressurePa 0 to below {@code pressurePa}
     * @param pressurePa total pressure
     */
    public static double humidityRatio(double vapourPressurePa, double pressurePa) {
        return MOLAR_MASS_RATIO * vapourPressurePa / (pressurePa - vapourPressurePa);
    }

    /**
     * Humidity ratio from dry bulb and relative humidity, counted over ice below 0.01 °C.
     *
     * @param dryBulbC dry bulb
     * @param relativeHumidityFraction 0 to 1
     * @param pressurePa total pressure
     */
    public static double humidityRatio(double dryBulbC, double relativeHumidityFraction, double pressurePa) {
        return humidityRatio(relativeHumidityFraction * saturationPressurePa(dryBulbC), pressurePa);
    }

    /** Humidity ratio of saturated air, over ice below 0.01 °C. */
    public static double saturatedHumidityRatio(double temperatureC, double pressurePa) {
        return humidityRatio(saturationPressurePa(temperatureC), pressurePa);
    }

    /** Vapour pressure of air with a given humidity ratio. */
    public static double vapourPressurePa(double humidityRatioKgPerKg, double pressurePa) {
        return pressurePa * humidityRatioKgPerKg / (MOLAR_MASS_RATIO + humidityRatioKgPerKg);
    }

    /** Relative humidity as a fraction, over ice below 0.01 °C. */
    public static double relativeHumidity(double dryBulbC, double humidityRatioKgPerKg, double pressurePa) {
        return vapourPressurePa(humidityRatioKgPerKg, pressurePa) / saturationPressurePa(dryBulbC);
    }

    /**
     * Dew point, which below freezing is the frost point: the temperature at which the saturation pressure is the vapour
     * pressure, by Newton's method to 1e-9 K.
     *
     * @param vapourPressurePa above 0
     * @throws IllegalArgumentException for dry air, which has none
     */
    public static double dewPointC(double vapourPressurePa) {
        return dewPointC(vapourPressurePa, BelowFreezing.OVER_ICE);
    }

    /**
     * Dew point with a choice of surface below freezing.
     *
     * @param vapourPressurePa above 0
     * @throws IllegalArgumentException for dry air, which has none
     */
    public static double dewPointC(double vapourPressurePa, BelowFreezing convention) {
        if (!(vapourPressurePa > 0)) {
            throw new IllegalArgumentException("no dew point at a vapour pressure of " + vapourPressurePa + " Pa");
        }
        boolean ice = convention == BelowFreezing.OVER_ICE && vapourPressurePa < SATURATION_AT_TRIPLE_POINT_PA;
        double target = Math.log(vapourPressurePa);
        // the Magnus formula starts within a kelvin or so; ln p is so straight in 1/T that few steps follow
        double magnus = Math.min(Math.log(vapourPressurePa / 611.2), 12);
        double inverse = 1 / (ZERO_C_IN_K + Math.min(400, 243.12 * magnus / (17.62 - magnus)));
        for (int step = 0; step < MOST_STEPS; step++) {
            double t = 1 / inverse;
            double difference = (ice ? lnOverIce(t) : lnOverWater(t)) - target;
            double slope = ice ? slopeOverIce(t) : slopeOverWater(t);
            double change = difference / (slope * t * t);
            inverse += change;
            if (Math.abs(change) * t * t < STEP_TOLERANCE_K) {
                return 1 / inverse - ZERO_C_IN_K;
            }
        }
        throw new IllegalStateException("no dew point found at a vapour pressure of " + vapourPressurePa + " Pa");
    }

    /**
     * Thermodynamic wet bulb, by Halley's method to better than 1e-7 K. The bulb is wet from 0 °C and iced below; where both forms
     * have a root the water form at 0 °C decides: not above the actual humidity ratio means water.
     *
     * @param dryBulbC dry bulb
     * @param humidityRatioKgPerKg at least 0; above saturation over ice the iced bulb stands above the dry bulb
     * @param pressurePa total pressure
     * @throws IllegalStateException where no wet bulb is found
     */
    public static double wetBulbC(double dryBulbC, double humidityRatioKgPerKg, double pressurePa) {
        double t = dryBulbC;
        double w = humidityRatioKgPerKg;
        boolean ice = wetBulbExcess(false, 0, WATER_SATURATION_AT_ZERO_PA, t, w, pressurePa) > 0;
        double latent = ice ? 2830 : 2501;
        double latentSlope = ice ? 0.24 : 2.326;
        double qSlope = -(1.006 + w * (ice ? 2.1 : 4.186));
        double qAtZero = 1.006 * t + w * (latent + 1.86 * t);
        double bulb = t;
        for (int step = 0; step < MOST_STEPS; step++) {
            double k = bulb + ZERO_C_IN_K;
            double slope = ice ? slopeOverIce(k) : slopeOverWater(k);
            double s = Math.exp(ice ? lnOverIce(k) : lnOverWater(k));
            double s1 = s * slope;
            double s2 = s1 * (slope - 2 / k);
            double l = latent - latentSlope * bulb;
            double q = qAtZero + qSlope * bulb;
            double f = MOLAR_MASS_RATIO * s * l - (pressurePa - s) * q;
            double f1 = MOLAR_MASS_RATIO * (s1 * l - s * latentSlope) + s1 * q - (pressurePa - s) * qSlope;
            double f2 = MOLAR_MASS_RATIO * (s2 * l - 2 * s1 * latentSlope) + s2 * q + 2 * s1 * qSlope;
            double change = 2 * f * f1 / (2 * f1 * f1 - f * f2);
            bulb -= change;
            if (Math.abs(change) < LAST_STEP_K) {
                return bulb;
            }
        }
        throw new IllegalStateException("no wet bulb found at " + t + " °C, " + w + " kg/kg, " + pressurePa + " Pa");
    }

    /**
     * How far the bulb lies above the wet bulb, times the (positive) pressure of dry air so that nothing blows up near
     * boiling: positive above the wet bulb, negative below.
     */
    private static double wetBulbExcess(
            boolean ice, double bulbC, double saturationPa, double dryBulbC, double w, double pressurePa) {
        double l = ice ? 2830 - 0.24 * bulbC : 2501 - 2.326 * bulbC;
        double v = ice ? 2830 + 1.86 * dryBulbC - 2.1 * bulbC : 2501 + 1.86 * dryBulbC - 4.186 * bulbC;
        return MOLAR_MASS_RATIO * saturationPa * l - (pressurePa - saturationPa) * (1.006 * (dryBulbC - bulbC) + w * v);
    }

    /**
     * Humidity ratio from dry and wet bulb (ASHRAE Fundamentals ch. 1, eq. 33 and 35): wet bulb from 0 °C, iced below.
     * Negative where no such air exists.
     *
     * @param dryBulbC dry bulb
     * @param wetBulbC at most the dry bulb
     * @param pressurePa total pressure
     */
    public static double humidityRatioFromWetBulb(double dryBulbC, double wetBulbC, double pressurePa) {
        double depression = 1.006 * (dryBulbC - wetBulbC);
        return wetBulbC >= 0
                ? ((2501 - 2.326 * wetBulbC) * humidityRatio(saturationPressureOverWaterPa(wetBulbC), pressurePa)
                                - depression)
                        / (2501 + 1.86 * dryBulbC - 4.186 * wetBulbC)
                : ((2830 - 0.24 * wetBulbC) * humidityRatio(saturationPressureOverIcePa(wetBulbC), pressurePa)
                                - depression)
                        / (2830 + 1.86 * dryBulbC - 2.1 * wetBulbC);
    }

    /** Dry bulb from wet (or, below 0 °C, iced) bulb and humidity ratio: {@link #humidityRatioFromWetBulb} solved for t. */
    public static double dryBulbFromWetBulbC(double wetBulbC, double humidityRatioKgPerKg, double pressurePa) {
        double w = humidityRatioKgPerKg;
        double heat = wetBulbC >= 0
                ? (2501 - 2.326 * wetBulbC) * humidityRatio(saturationPressureOverWaterPa(wetBulbC), pressurePa)
                        - w * (2501 - 4.186 * wetBulbC)
                : (2830 - 0.24 * wetBulbC) * humidityRatio(saturationPressureOverIcePa(wetBulbC), pressurePa)
                        - w * (2830 - 2.1 * wetBulbC);
        return (heat + 1.006 * wetBulbC) / (1.006 + 1.86 * w);
    }

    /** Enthalpy per kg of dry air, J/kg (ASHRAE Fundamentals ch. 1, eq. 30). */
    public static double enthalpyJPerKg(double dryBulbC, double humidityRatioKgPerKg) {
        return 1000 * (1.006 * dryBulbC + humidityRatioKgPerKg * (2501 + 1.86 * dryBulbC));
    }

    /** Humidity ratio from dry bulb and enthalpy; negative where no such air exists. */
    public static double humidityRatioFromEnthalpy(double dryBulbC, double enthalpyJPerKg) {
        return (enthalpyJPerKg / 1000 - 1.006 * dryBulbC) / (2501 + 1.86 * dryBulbC);
    }

    /** Dry bulb from enthalpy and humidity ratio. */
    public static double dryBulbFromEnthalpyC(double enthalpyJPerKg, double humidityRatioKgPerKg) {
        return (enthalpyJPerKg / 1000 - 2501 * humidityRatioKgPerKg) / (1.006 + 1.86 * humidityRatioKgPerKg);
    }

    /** Volume per kg of dry air, m³/kg (ASHRAE Fundamentals ch. 1, eq. 26). */
    public static double volumeM3PerKg(double dryBulbC, double humidityRatioKgPerKg, double pressurePa) {
        return DRY_AIR_GAS_CONSTANT
                * (dryBulbC + ZERO_C_IN_K)
                * (1 + VOLUME_PER_HUMIDITY * humidityRatioKgPerKg)
                / pressurePa;
    }

    /** Density of the mixture, kg of dry air and vapour per m³. */
    public static double densityKgPerM3(double dryBulbC, double humidityRatioKgPerKg, double pressurePa) {
        return (1 + humidityRatioKgPerKg) / volumeM3PerKg(dryBulbC, humidityRatioKgPerKg, pressurePa);
    }

    /** Dynamic viscosity of air, Pa·s (Sutherland's formula; ISO 9972 and ASTM E779, from memory). */
    public static double viscosityPaS(double temperatureC) {
        double kelvin = temperatureC + ZERO_C_IN_K;
        return 1.458e-6 * Math.pow(kelvin, 1.5) / (kelvin + 110.4);
    }

    /** Density of dry air, kg/m³. */
    public static double dryAirDensityKgPerM3(double temperatureC, double pressurePa) {
        return densityKgPerM3(temperatureC, 0, pressurePa);
    }
}
