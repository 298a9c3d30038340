package oakum.physics.hygrothermal;

/**
 * A layer of air between two faces, one well mixed cell: both faces exchange heat and vapour with it through their own
 * films, and outdoor air may pass through it. How much passes is the climate's {@code cavityAirChangesPerHour}.
 *
 * @param name as people call it
 * @param thicknessM 0.001 to 1
 * @param faceHeatWPerM2K coefficient of heat transfer between each face and the air, radiation between the faces
 *     included, 0.1 to 50
 * @param faceVapourSPerM coefficient of vapour transfer between each face and the air, 1e-10 to 1e-5
 * @param ventilated whether outdoor air passes
 * @param initialHumidityFraction relative humidity at the start, 0 to 1
 */
public record AirLayer(
        String name,
        double thicknessM,
        double faceHeatWPerM2K,
        double faceVapourSPerM,
        boolean ventilated,
        double initialHumidityFraction)
        implements WallLayer {

    /** An unventilated layer of this thermal resistance (as ISO 6946 tabulates it) and vapour resistance s_d. */
    public static AirLayer still(
            String name, double thicknessM, double resistanceM2KPerW, double sdM, double initialHumidityFraction) {
        return new AirLayer(
                name,
                thicknessM,
                2 / resistanceM2KPerW,
                2 * Constants.STILL_AIR_PERMEABILITY_KG_PER_M_S_PA / sdM,
                false,
                initialHumidityFraction);
    }
}
