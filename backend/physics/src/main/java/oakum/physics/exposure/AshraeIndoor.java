package oakum.physics.exposure;

import oakum.physics.calculation.Source;

/** Indoor design values of ASHRAE 160 (sections 4.2 and 4.3, from memory). */
public final class AshraeIndoor {
    static final Source SOURCE = Source.fromMemory("ANSI/ASHRAE 160-2021, sections 4.2 and 4.3");

    /** Above this indoor humidity the fresh air assumed is too little to be real: the simplified method ends there. */
    static final double VENTILATION_MISSING = 0.70;

    private static final double HEATED_C = 21.1;
    private static final double HEATING_ENDS_C = 18.3;
    private static final double SUMMER_RISE_K = 2.8;
    private static final double COOLED_C = 23.9;

    /** c of the intermediate method, Pa·m³/kg. */
    private static final double VAPOUR_CONSTANT = 1.36e5;

    private static final double LITRES_PER_DAY_TO_KG_PER_S = 1 / 86_400.0;
    private static final double[] LITRES_PER_DAY = {8, 12, 14, 15};

    private AshraeIndoor() {}

    /** Indoor temperature, °C, from the outdoor mean of 24 hours. */
    public static double temperatureC(double outdoorDayMeanC, boolean cooled) {
        double heated = outdoorDayMeanC <= HEATING_ENDS_C ? HEATED_C : outdoorDayMeanC + SUMMER_RISE_K;
        return cooled ? Math.min(heated, COOLED_C) : heated;
    }

    /** Indoor relative humidity, a fraction, from the outdoor mean of 24 hours: 40 % up to −10 °C, 70 % from 20 °C. */
    public static double simplifiedHumidity(double outdoorDayMeanC) {
        return Math.max(0.40, Math.min(0.70, 0.40 + 0.01 * (outdoorDayMeanC + 10)));
    }

    /**
     * Moisture that people, cooking and washing give off, kg/s.
     *
     * @param bedrooms at least 1
     */
    public static double generationKgPerS(int bedrooms) {
        int listed = Math.min(bedrooms, LITRES_PER_DAY.length);
        return (LITRES_PER_DAY[listed - 1] + bedrooms - listed) * LITRES_PER_DAY_TO_KG_PER_S;
    }

    /** Vapour pressure inside above that outside, Pa. */
    public static double excessPa(double moistureKgPerS, double airflowM3PerS) {
        return VAPOUR_CONSTANT * moistureKgPerS / airflowM3PerS;
    }
}
