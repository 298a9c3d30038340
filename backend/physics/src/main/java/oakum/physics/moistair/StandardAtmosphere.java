package oakum.physics.moistair;

/** Pressure, temperature and density over altitude (ASHRAE Fundamentals ch. 1, eq. 3 and 4; −5000 to 11000 m). */
public final class StandardAtmosphere {
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double SCALE_HEIGHT_GAS_CONSTANT = 287.055;
    private static final double SCALE_HEIGHT_GRAVITY = 9.807;

    private StandardAtmosphere() {}

    /**
     * Pressure of the standard atmosphere.
     *
     * @param altitudeM above sea level, −5000 to 11000
     */
    public static double pressurePa(double altitudeM) {
        return MoistAir.STANDARD_PRESSURE_PA * Math.pow(1 - 2.25577e-5 * altitudeM, 5.2559);
    }

    /**
     * Temperature of the standard atmosphere.
     *
     * @param altitudeM above sea level, −5000 to 11000
     */
    public static double temperatureC(double altitudeM) {
        return 15 - LAPSE_K_PER_M * altitudeM;
    }

    /**
     * Altitude at which the standard atmosphere has a pressure.
     *
     * @param pressurePa above 0
     */
    public static double altitudeM(double pressurePa) {
        return (1 - Math.pow(pressurePa / MoistAir.STANDARD_PRESSURE_PA, 1 / 5.2559)) / 2.25577e-5;
    }

    /**
     * Pressure reduced to sea level, from a station's own (the form that weather services print).
     *
     * @param stationPressurePa at the station
     * @param altitudeM of the station
     * @param meanTemperatureC at the station; weather services take the mean of 12 hours
     */
    public static double seaLevelPressurePa(double stationPressurePa, double altitudeM, double meanTemperatureC) {
        return stationPressurePa * Math.exp(altitudeM / scaleHeightM(altitudeM, meanTemperatureC));
    }

    /**
     * A station's own pressure from the pressure reduced to sea level: the inverse of {@link #seaLevelPressurePa}.
     *
     * @param seaLevelPressurePa as a weather service prints it
     * @param altitudeM of the station
     * @param meanTemperatureC at the station
     */
    public static double stationPressurePa(double seaLevelPressurePa, double altitudeM, double meanTemperatureC) {
        return seaLevelPressurePa * Math.exp(-altitudeM / scaleHeightM(altitudeM, meanTemperatureC));
    }

    private static double scaleHeightM(double altitudeM, double meanTemperatureC) {
        double columnK = meanTemperatureC + MoistAir.ZERO_C_IN_K + LAPSE_K_PER_M * altitudeM / 2;
        return SCALE_HEIGHT_GAS_CONSTANT * columnK / SCALE_HEIGHT_GRAVITY;
    }
}
