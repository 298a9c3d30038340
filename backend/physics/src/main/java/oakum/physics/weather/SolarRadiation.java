package oakum.physics.weather;

/** The sun above the air, its path through it, and what monthly and hourly totals say of its parts. */
public final class SolarRadiation {
    /** Mean irradiance above the air, W/m² (as the clear-sky model of ASHRAE takes it). */
    static final double SOLAR_CONSTANT_W_PER_M2 = 1367;

    private static final double DAILY_CONSTANT_MJ_PER_M2_MIN = 0.0820;
    private static final int MINUTES_PER_DAY = 24 * 60;

    private SolarRadiation() {}

    /**
     * Irradiance above the air on a surface that faces the sun, W/m² (ASHRAE Fundamentals ch. 14).
     *
     * @param dayOfYear 1 to 366
     */
    public static double extraterrestrialNormalWPerM2(double dayOfYear) {
        return SOLAR_CONSTANT_W_PER_M2 * (1 + 0.033 * Math.cos(2 * Math.PI * (dayOfYear - 3) / 365));
    }

    /**
     * Relative air mass (Kasten and Young 1989).
     *
     * @param elevationDeg of the sun, above 0; lower is taken as 0
     */
    public static double airMass(double elevationDeg) {
        double b = Math.max(0, elevationDeg);
        return 1 / (Math.sin(Math.toRadians(b)) + 0.50572 * Math.pow(6.07995 + b, -1.6364));
    }

    /**
     * Sun above the air on level ground in a day, MJ/m² (FAO-56 eq. 21).
     *
     * @param dayOfYear 1 to 366
     */
    public static double extraterrestrialDayMJPerM2(double latitudeDeg, double dayOfYear) {
        double latitude = Math.toRadians(latitudeDeg);
        double declination = dailyDeclination(dayOfYear);
        double sunset = sunsetAngle(latitude, declination);
        double distance = 1 + 0.033 * Math.cos(2 * Math.PI * dayOfYear / 365);
        return MINUTES_PER_DAY
                / Math.PI
                * DAILY_CONSTANT_MJ_PER_M2_MIN
                * distance
                * (sunset * Math.sin(latitude) * Math.sin(declination)
                        + Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset));
    }

    /** Hour angle of sunset, radians; 0 in polar night and π in polar day. */
    static double sunsetHourAngle(double latitudeDeg, double dayOfYear) {
        return sunsetAngle(Math.toRadians(latitudeDeg), dailyDeclination(dayOfYear));
    }

    private static double dailyDeclination(double dayOfYear) {
        return 0.409 * Math.sin(2 * Math.PI * dayOfYear / 365 - 1.39);
    }

    private static double sunsetAngle(double latitude, double declination) {
        return Math.acos(Math.max(-1, Math.min(1, -Math.tan(latitude) * Math.tan(declination))));
    }

    /**
     * Share of a day's sun that an hour brings (Collares-Pereira and Rabl 1979).
     *
     * @param hourAngle of the middle of the hour, radians, 0 at noon
     * @param sunsetAngle hour angle of sunset, radians, above 0
     * @return 0 outside daylight; the shares of a day add up to about 1
     */
    static double hourlyShare(double hourAngle, double sunsetAngle) {
        if (Math.abs(hourAngle) >= sunsetAngle) {
            return 0;
        }
        double a = 0.409 + 0.5016 * Math.sin(sunsetAngle - Math.PI / 3);
        double b = 0.6609 - 0.4767 * Math.sin(sunsetAngle - Math.PI / 3);
        return Math.max(
                0,
                Math.PI
                        / 24
                        * (a + b * Math.cos(hourAngle))
                        * (Math.cos(hourAngle) - Math.cos(sunsetAngle))
                        / (Math.sin(sunsetAngle) - sunsetAngle * Math.cos(sunsetAngle)));
    }

    /**
     * Share of the global irradiance that is diffuse (Erbs, Klein and Duffie 1982).
     *
     * @param clearness global over extraterrestrial irradiance on level ground, 0 to about 1
     */
    public static double diffuseFraction(double clearness) {
        double kt = clearness;
        if (kt <= 0.22) {
            return 1 - 0.09 * kt;
        }
        return kt <= 0.80 ? 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + 12.336 * kt))) : 0.165;
    }
}
