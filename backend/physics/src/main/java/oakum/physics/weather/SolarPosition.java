package oakum.physics.weather;

import java.time.Instant;

/**
 * Where the sun stands (short set of Meeus as the US weather service publishes it; from memory, within 0.01° of an
 * ephemeris between 1950 and 2050).
 *
 * @param zenithDeg angle from the vertical to the centre of the sun, without refraction, 0 to 180
 * @param azimuthDeg clockwise from north, 0 to 360
 * @param declinationDeg of the sun
 * @param equationOfTimeMin sundial ahead of the mean sun
 */
public record SolarPosition(double zenithDeg, double azimuthDeg, double declinationDeg, double equationOfTimeMin) {
    private static final double JULIAN_DAY_OF_EPOCH = 2_440_587.5;
    private static final double JULIAN_DAY_OF_2000 = 2_451_545;
    private static final double DAYS_PER_CENTURY = 36_525;
    private static final double SECONDS_PER_DAY = 86_400;

    /** The sun's radius and the refraction at the horizon: below that it is not seen. */
    private static final double LOWEST_SEEN_DEG = -(0.26667 + 0.5667);

    /**
     * Position at a moment.
     *
     * @param latitudeDeg north positive, −90 to 90
     * @param longitudeDeg east positive, −180 to 180
     */
    public static SolarPosition at(double latitudeDeg, double longitudeDeg, Instant moment) {
        return at(latitudeDeg, longitudeDeg, moment.getEpochSecond() + 1e-9 * moment.getNano(), 0);
    }

    /**
     * Position at a moment.
     *
     * @param epochSecond UTC seconds since 1970
     * @param deltaTS how far the earth's clock lags behind the ephemeris' (about 70 s now); 0 costs less than 0.001°
     */
    static SolarPosition at(double latitudeDeg, double longitudeDeg, double epochSecond, double deltaTS) {
        double julianDay = epochSecond / SECONDS_PER_DAY + JULIAN_DAY_OF_EPOCH;
        double t = (julianDay + deltaTS / SECONDS_PER_DAY - JULIAN_DAY_OF_2000) / DAYS_PER_CENTURY;
        double meanLongitude = Math.toRadians(280.46646 + t * (36_000.76983 + 0.0003032 * t));
        double anomaly = Math.toRadians(357.52911 + t * (35_999.05029 - 0.0001537 * t));
        double eccentricity = 0.016708634 - t * (4.2037e-5 + 1.267e-7 * t);
        double centreDeg = (1.914602 - t * (0.004817 + 1.4e-5 * t)) * Math.sin(anomaly)
                + (0.019993 - 0.000101 * t) * Math.sin(2 * anomaly)
                + 0.000289 * Math.sin(3 * anomaly);
        double node = Math.toRadians(125.04 - 1934.136 * t);
        double apparent = meanLongitude + Math.toRadians(centreDeg - 0.00569 - 0.00478 * Math.sin(node));
        double obliquity = Math.toRadians(23
                + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60
                + 0.00256 * Math.cos(node));

        double declination = Math.asin(Math.sin(obliquity) * Math.sin(apparent));
        double y = Math.pow(Math.tan(obliquity / 2), 2);
        double equationOfTimeMin = 720
                / Math.PI
                * (y * Math.sin(2 * meanLongitude)
                        - 2 * eccentricity * Math.sin(anomaly)
                        + 4 * eccentricity * y * Math.sin(anomaly) * Math.cos(2 * meanLongitude)
                        - y * y / 2 * Math.sin(4 * meanLongitude)
                        - 1.25 * eccentricity * eccentricity * Math.sin(2 * anomaly));

        double minuteOfDay = (epochSecond / 60) % 1440;
        double hourAngle = Math.toRadians((minuteOfDay + equationOfTimeMin + 4 * longitudeDeg) / 4 - 180);
        double latitude = Math.toRadians(latitudeDeg);
        double cosZenith = Math.sin(latitude) * Math.sin(declination)
                + Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle);
        double azimuthDeg = 180
                + Math.toDegrees(Math.atan2(
                        Math.sin(hourAngle),
                        Math.cos(hourAngle) * Math.sin(latitude) - Math.tan(declination) * Math.cos(latitude)));
        return new SolarPosition(
                Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cosZenith)))),
                azimuthDeg % 360,
                Math.toDegrees(declination),
                equationOfTimeMin);
    }

    /** Height above the horizon, without refraction. */
    public double elevationDeg() {
        return 90 - zenithDeg;
    }

    /** Cosine of the zenith angle; below 0 at night. */
    public double cosZenith() {
        return Math.cos(Math.toRadians(zenithDeg));
    }

    /**
     * Zenith angle as seen through the air.
     *
     * @param pressurePa of the air
     * @param temperatureC of the air
     */
    public double apparentZenithDeg(double pressurePa, double temperatureC) {
        double e0 = elevationDeg();
        if (e0 < LOWEST_SEEN_DEG) {
            return zenithDeg;
        }
        double refractionDeg = pressurePa
                / 101_000
                * 283
                / (273 + temperatureC)
                * 1.02
                / (60 * Math.tan(Math.toRadians(e0 + 10.3 / (e0 + 5.11))));
        return zenithDeg - refractionDeg;
    }

    /**
     * Cosine of the angle between the sun and the outward normal of a surface; below 0 where the sun is behind it.
     *
     * @param tiltDeg 0 level and facing up, 90 a wall, 180 facing down
     * @param facingDeg where it faces, clockwise from north
     */
    public double cosIncidence(double tiltDeg, double facingDeg) {
        double zenith = Math.toRadians(zenithDeg);
        double tilt = Math.toRadians(tiltDeg);
        return Math.cos(zenith) * Math.cos(tilt)
                + Math.sin(zenith) * Math.sin(tilt) * Math.cos(Math.toRadians(azimuthDeg - facingDeg));
    }
}
