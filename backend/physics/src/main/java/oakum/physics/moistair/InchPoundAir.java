package oakum.physics.moistair;

import oakum.physics.numerics.Roots;

/**
 * The handbook's own inch-pound forms of enthalpy, volume and wet bulb (ASHRAE Fundamentals ch. 1, inch-pound edition).
 * They are separate fits: at one wet bulb they give a humidity ratio up to 0.3 % from the SI forms, so whoever compares
 * with an inch-pound table must use them. Temperatures in °F, pressures in psi absolute, humidity ratios in lb of vapour
 * per lb of dry air.
 */
public final class InchPoundAir {
    private static final double PA_PER_PSI = 6894.757293168;
    private static final double FREEZING_F = 32;

    private InchPoundAir() {}

    /** Dew point, °F, of a vapour pressure. */
    public static double dewPointF(double humidityRatio, double pressurePsi) {
        return toF(MoistAir.dewPointC(MoistAir.vapourPressurePa(humidityRatio, pressurePsi * PA_PER_PSI)));
    }

    /** Humidity ratio from dry bulb and relative humidity as a fraction. */
    public static double humidityRatio(double dryBulbF, double relativeHumidityFraction, double pressurePsi) {
        return MoistAir.humidityRatio(toC(dryBulbF), relativeHumidityFraction, pressurePsi * PA_PER_PSI);
    }

    /** Relative humidity as a fraction. */
    public static double relativeHumidity(double dryBulbF, double humidityRatio, double pressurePsi) {
        return MoistAir.relativeHumidity(toC(dryBulbF), humidityRatio, pressurePsi * PA_PER_PSI);
    }

    /** Humidity ratio from dry and wet bulb; the bulb is iced below 32 °F. */
    public static double humidityRatioFromWetBulb(double dryBulbF, double wetBulbF, double pressurePsi) {
        return humidityRatioFromWetBulb(wetBulbF < FREEZING_F, dryBulbF, wetBulbF, pressurePsi);
    }

    private static double humidityRatioFromWetBulb(boolean ice, double t, double bulb, double pressurePsi) {
        double c = toC(bulb);
        double saturated = MoistAir.humidityRatio(
                ice ? MoistAir.saturationPressureOverIcePa(c) : MoistAir.saturationPressureOverWaterPa(c),
                pressurePsi * PA_PER_PSI);
        return ice
                ? ((1220 - 0.04 * bulb) * saturated - 0.240 * (t - bulb)) / (1220 + 0.444 * t - 0.48 * bulb)
                : ((1093 - 0.556 * bulb) * saturated - 0.240 * (t - bulb)) / (1093 + 0.444 * t - bulb);
    }

    /**
     * Wet bulb, °F, to 1e-9; the water form at 32 °F decides between water and ice.
     *
     * @throws IllegalArgumentException where the air is above saturation or so dry that no bulb above −100 °F fits
     */
    public static double wetBulbF(double dryBulbF, double humidityRatio, double pressurePsi) {
        boolean ice = dryBulbF < FREEZING_F
                || humidityRatioFromWetBulb(false, dryBulbF, FREEZING_F, pressurePsi) > humidityRatio;
        return Roots.bracketed(
                bulb -> humidityRatioFromWetBulb(ice, dryBulbF, bulb, pressurePsi) - humidityRatio,
                ice ? -100 : FREEZING_F,
                dryBulbF,
                1e-9);
    }

    /** Enthalpy, Btu per lb of dry air, counted from 0 °F. */
    public static double enthalpyBtuPerLb(double dryBulbF, double humidityRatio) {
        return 0.240 * dryBulbF + humidityRatio * (1061 + 0.444 * dryBulbF);
    }

    /** Volume, ft³ per lb of dry air. */
    public static double volumeFt3PerLb(double dryBulbF, double humidityRatio, double pressurePsi) {
        return 0.370486 * (dryBulbF + 459.67) * (1 + 1.607858 * humidityRatio) / pressurePsi;
    }

    private static double toC(double fahrenheit) {
        return (fahrenheit - 32) / 1.8;
    }

    private static double toF(double celsius) {
        return 1.8 * celsius + 32;
    }
}
