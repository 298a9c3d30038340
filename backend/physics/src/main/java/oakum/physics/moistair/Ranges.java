package oakum.physics.moistair;

/** Where the equations of moist air have meaning, and who says so. */
final class Ranges {
    static final double COLDEST_C = -60;
    static final double HOTTEST_C = 90;
    static final String TABLES = "ASHRAE Fundamentals ch. 1, tables of moist air, −60 to 90 °C, from memory";

    static final double DRIEST_DEW_POINT_C = -100;
    static final String SATURATION =
            "ASHRAE Fundamentals ch. 1, saturation pressure over ice from −100 °C, from memory";
    static final String IDEAL_MIXTURE =
            "ASHRAE Fundamentals ch. 1: the ideal-mixture equations hold from −40 to 60 °C, from memory";

    static final double LOWEST_ALTITUDE_M = -5000;
    static final double HIGHEST_ALTITUDE_M = 11_000;
    static final double LEAST_PRESSURE_PA = 22_600;
    static final double GREATEST_PRESSURE_PA = 177_800;
    static final String ATMOSPHERE =
            "standard atmosphere from −5000 m to 11000 m, ASHRAE Fundamentals ch. 1, from memory";

    private Ranges() {}
}
