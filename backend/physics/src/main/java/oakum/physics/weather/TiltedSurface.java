package oakum.physics.weather;

import oakum.physics.weather.SkyModel.SkyLight;

/**
 * A plane in the open: how much sun falls on it.
 *
 * @param tiltDeg 0 level and facing up, 90 a wall, 180 facing down
 * @param facingDeg where it faces, clockwise from north, 0 to 360; of no account when level
 * @param albedo share of light that the ground in front throws back, 0 to 1
 * @param skyModel how bright each part of the sky is taken
 */
public record TiltedSurface(double tiltDeg, double facingDeg, double albedo, SkyModel skyModel) {

    /**
     * What falls on it, by where it comes from, W/m².
     *
     * @param beamWPerM2 from the sun
     * @param skyWPerM2 from the sky
     * @param groundWPerM2 thrown back by the ground
     */
    public record Irradiance(double beamWPerM2, double skyWPerM2, double groundWPerM2) {
        static final Irradiance NONE = new Irradiance(0, 0, 0);

        public double totalWPerM2() {
            return beamWPerM2 + skyWPerM2 + groundWPerM2;
        }
    }

    /**
     * Light on it at one moment.
     *
     * @param sun where the sun stands
     * @param light of sun and sky
     * @param globalHorizontalWPerM2 on level ground, for what the ground throws back
     */
    public Irradiance irradiance(SolarPosition sun, SkyLight light, double globalHorizontalWPerM2) {
        double cos = sun.cosIncidence(tiltDeg, facingDeg);
        return new Irradiance(
                light.directNormalWPerM2() * Math.max(0, cos),
                skyModel.diffuseWPerM2(light, tiltDeg, cos),
                SkyModel.fromGroundWPerM2(globalHorizontalWPerM2, albedo, tiltDeg));
    }

    /**
     * Total light on it in each hour, W/m².
     *
     * @param sun course of the sun over the same hours
     */
    public double[] hourlyWPerM2(HourlyWeather weather, SunCourse sun) {
        double[] total = new double[weather.hours()];
        for (int i = 0; i < total.length; i++) {
            total[i] = irradiance(weather, sun, i).totalWPerM2();
        }
        return total;
    }

    /** Light on it in one hour. */
    public Irradiance irradiance(HourlyWeather weather, SunCourse sun, int hour) {
        double global = weather.value(WeatherQuantity.GLOBAL_HORIZONTAL, hour);
        double diffuse = weather.value(WeatherQuantity.DIFFUSE_HORIZONTAL, hour);
        if (global <= 0 && diffuse <= 0) {
            return Irradiance.NONE;
        }
        SolarPosition position = sun.position(hour);
        double elevation = position.elevationDeg();
        return irradiance(
                position,
                new SkyLight(
                        elevation > 0 ? weather.value(WeatherQuantity.DIRECT_NORMAL, hour) : 0,
                        diffuse,
                        Math.min(90, position.zenithDeg()),
                        sun.extraterrestrialNormalWPerM2(hour),
                        SolarRadiation.airMass(elevation)),
                global);
    }
}
