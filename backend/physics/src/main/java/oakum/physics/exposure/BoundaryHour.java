package oakum.physics.exposure;

/**
 * What surrounds a wall or roof in one hour. Air, vapour and film are those of the moment at which the hour begins; sun
 * and rain are means over the hour.
 *
 * @param outdoorTemperatureC air outside
 * @param outdoorVapourPressurePa outside
 * @param irradianceWPerM2 sun that falls on the face
 * @param skyTemperatureC how cold the sky looks
 * @param filmWPerM2K combined coefficient of the outer film
 * @param equivalentTemperatureC air temperature that would heat the face as air, sun and sky do together
 * @param rainKgPerM2H rain that reaches the face
 * @param indoorTemperatureC air inside
 * @param indoorVapourPressurePa inside
 * @param leakM3PerSM2 air from inside that leaks into the wall
 */
public record BoundaryHour(
        double outdoorTemperatureC,
        double outdoorVapourPressurePa,
        double irradianceWPerM2,
        double skyTemperatureC,
        double filmWPerM2K,
        double equivalentTemperatureC,
        double rainKgPerM2H,
        double indoorTemperatureC,
        double indoorVapourPressurePa,
        double leakM3PerSM2) {}
