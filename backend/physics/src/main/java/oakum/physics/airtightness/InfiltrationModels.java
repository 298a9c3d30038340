package oakum.physics.airtightness;

import oakum.physics.moistair.MoistAir;

/**
 * Air that wind and stack drive through the leaks, by the models of handbooks and papers. All flows are for one moment's
 * weather. Coefficients are from memory (ASHRAE Fundamentals ch. 16; Walker and Wilson 1998; Sherman and Grimsrud 1980;
 * ASHRAE 62.2), temperatures in K difference or °C, wind in m/s at the weather station unless it says otherwise.
 */
final class InfiltrationModels {
    private static final double GRAVITY_M_PER_S2 = 9.81;

    /** By storeys: (L/s)² per (cm⁴·K). */
    private static final double[] BASIC_STACK = {0.000145, 0.000290, 0.000435};

    /** By shelter class, then storeys: (L/s)² per (cm⁴·(m/s)²). */
    private static final double[][] BASIC_WIND = {
        {0.000319, 0.000420, 0.000494},
        {0.000246, 0.000325, 0.000382},
        {0.000174, 0.000231, 0.000271},
        {0.000104, 0.000137, 0.000161},
        {0.000032, 0.000042, 0.000049}
    };

    private static final double[] ENHANCED_STACK = {0.054, 0.078, 0.098};
    private static final double[] ENHANCED_STACK_FLUE = {0.069, 0.089, 0.107};
    private static final double[] ENHANCED_WIND = {0.156, 0.170, 0.170};
    private static final double[] ENHANCED_WIND_FLUE = {0.142, 0.156, 0.167};
    private static final double[] ENHANCED_WIND_CRAWL = {0.128, 0.142, 0.151};
    private static final double[] ENHANCED_WIND_CRAWL_FLUE = {0.128, 0.142, 0.154};
    private static final double[] SHELTER = {1.00, 0.90, 0.70, 0.50, 0.30};
    private static final double[][] SHELTER_FLUE = {
        {1.10, 1.07, 1.06},
        {1.02, 0.98, 0.97},
        {0.86, 0.81, 0.79},
        {0.70, 0.64, 0.61},
        {0.54, 0.47, 0.43}
    };

    /** Wind at the eaves over wind at the station, by storeys. */
    private static final double[] WIND_AT_EAVES = {0.48, 0.59, 0.67};

    private static final double[] LBL_SHIELD = {0.324, 0.285, 0.240, 0.185, 0.102};
    private static final double[] LBL_TERRAIN_FACTOR = {1.30, 1.00, 0.85, 0.67, 0.47};
    private static final double[] LBL_TERRAIN_EXPONENT = {0.10, 0.15, 0.20, 0.25, 0.35};
    private static final double LBL_TEMPERATURE_K = 295;

    private static final double STANDARD_STOREY_M = 2.5;

    private InfiltrationModels() {}

    /**
     * What stack and wind drive, each alone and together.
     *
     * @param stackM3PerS with the wind asleep
     * @param windM3PerS without a temperature difference
     * @param airflowM3PerS together
     */
    record Flow(double stackM3PerS, double windM3PerS, double airflowM3PerS) {
        static Flow inQuadrature(double stackM3PerS, double windM3PerS) {
            return new Flow(stackM3PerS, windM3PerS, Math.hypot(stackM3PerS, windM3PerS));
        }
    }

    /**
     * ASHRAE basic model.
     *
     * @param leakageArea4M2 effective leakage area at 4 Pa
     * @param differenceK indoors to outdoors, its size
     * @param windMPerS at the weather station
     * @param storeys 1 to 3
     * @param shelter class 1 (none) to 5 (heavy)
     */
    static Flow basic(double leakageArea4M2, double differenceK, double windMPerS, int storeys, int shelter) {
        double perArea = leakageArea4M2 * 1e4 / 1000;
        return Flow.inQuadrature(
                perArea * Math.sqrt(BASIC_STACK[storeys - 1] * differenceK),
                perArea * Math.sqrt(BASIC_WIND[shelter - 1][storeys - 1]) * windMPerS);
    }

    /**
     * ASHRAE enhanced model.
     *
     * @param law the house's power law at standard conditions
     * @param crawlSpace whether it stands on a crawl space instead of a basement or slab
     * @param flue whether a flue is open to the rooms
     */
    static Flow enhanced(
            PowerLaw law,
            double differenceK,
            double windMPerS,
            int storeys,
            int shelter,
            boolean crawlSpace,
            boolean flue) {
        double n = law.exponent();
        double c = law.coefficientM3PerSPaN();
        double[] stack = flue ? ENHANCED_STACK_FLUE : ENHANCED_STACK;
        double[] wind = crawlSpace
                ? (flue ? ENHANCED_WIND_CRAWL_FLUE : ENHANCED_WIND_CRAWL)
                : (flue ? ENHANCED_WIND_FLUE : ENHANCED_WIND);
        double shelterFactor = flue ? SHELTER_FLUE[shelter - 1][storeys - 1] : SHELTER[shelter - 1];
        double atHouse = shelterFactor * windAtEavesMPerS(windMPerS, storeys);
        return Flow.inQuadrature(
                c * stack[storeys - 1] * Math.pow(differenceK, n), c * wind[storeys - 1] * Math.pow(atHouse, 2 * n));
    }

    static double windAtEavesMPerS(double stationMPerS, int storeys) {
        return WIND_AT_EAVES[storeys - 1] * stationMPerS;
    }

    static double shelterFactor(int shelter) {
        return SHELTER[shelter - 1];
    }

    /** Stack pressure over the height of the house, Pa: outdoor air of dry density, p/(287.055·T). */
    static double stackPressurePa(double heightM, double indoorC, double outdoorC, double pressurePa) {
        double indoorK = indoorC + MoistAir.ZERO_C_IN_K;
        return outdoorDensity(outdoorC, pressurePa)
                * GRAVITY_M_PER_S2
                * heightM
                * Math.abs(indoorC - outdoorC)
                / indoorK;
    }

    private static double outdoorDensity(double outdoorC, double pressurePa) {
        return pressurePa / (287.055 * (outdoorC + MoistAir.ZERO_C_IN_K));
    }

    /** AIM-2's stack factor without a flue. */
    static double aim2StackFactor(double n, double ceilingAndFloor, double ceilingLessFloor) {
        double m = ceilingLessFloor * ceilingLessFloor / (2 - ceilingAndFloor);
        return (1 + n * ceilingAndFloor) / (n + 1) * Math.pow(0.5 - 0.5 * Math.pow(m, 1.25), n + 1);
    }

    /** AIM-2's wind factor without a flue, basement or slab. */
    static double aim2WindFactor(double n, double ceilingAndFloor, double ceilingLessFloor) {
        return 0.19 * (2 - n) * (1 - Math.pow((ceilingLessFloor + ceilingAndFloor) / 2, 1.5));
    }

    /**
     * AIM-2 without a flue (Walker and Wilson 1998).
     *
     * @param ceilingAndFloor R, share of the leaks in ceiling and floor, 0 to 1
     * @param ceilingLessFloor X, ceiling leaks less floor leaks as a share of all, −R to R
     * @param heightM of the eaves
     * @param eavesWindMPerS at the eaves, unsheltered
     * @param shelterFactor Sw
     */
    static Flow aim2(
            PowerLaw law,
            double ceilingAndFloor,
            double ceilingLessFloor,
            double heightM,
            double indoorC,
            double outdoorC,
            double pressurePa,
            double eavesWindMPerS,
            double shelterFactor) {
        double n = law.exponent();
        double c = law.coefficientM3PerSPaN();
        double stack = c
                * aim2StackFactor(n, ceilingAndFloor, ceilingLessFloor)
                * Math.pow(stackPressurePa(heightM, indoorC, outdoorC, pressurePa), n);
        double atHouse = shelterFactor * eavesWindMPerS;
        double wind = c
                * aim2WindFactor(n, ceilingAndFloor, ceilingLessFloor)
                * Math.pow(outdoorDensity(outdoorC, pressurePa) * atHouse * atHouse / 2, n);
        double together = Math.pow(stack, 1 / n) + Math.pow(wind, 1 / n) - Math.pow(stack * wind, 1 / (2 * n)) / 3;
        return new Flow(stack, wind, Math.pow(together, n));
    }

    /** The stack parameter of the LBL model, m/(s·√K). */
    static double lblStack(double ceilingAndFloor, double ceilingLessFloor, double heightM) {
        double x = ceilingLessFloor / (2 - ceilingAndFloor);
        return (1 + ceilingAndFloor / 2)
                / 3
                * Math.pow(1 - x * x, 1.5)
                * Math.sqrt(GRAVITY_M_PER_S2 * heightM / LBL_TEMPERATURE_K);
    }

    /** The wind parameter of the LBL model. */
    static double lblWind(double ceilingAndFloor, double heightM, int shelter, int terrain) {
        return LBL_SHIELD[shelter - 1]
                * Math.cbrt(1 - ceilingAndFloor)
                * LBL_TERRAIN_FACTOR[terrain - 1]
                * Math.pow(heightM / 10, LBL_TERRAIN_EXPONENT[terrain - 1]);
    }

    /**
     * LBL model (Sherman and Grimsrud 1980); the station stands in terrain II at 10 m.
     *
     * @param shelter shielding I (none) to V (heavy)
     * @param terrain I (water) to V (city)
     */
    static Flow lbl(
            double leakageArea4M2,
            double differenceK,
            double windMPerS,
            double heightM,
            double ceilingAndFloor,
            double ceilingLessFloor,
            int shelter,
            int terrain) {
        return Flow.inQuadrature(
                leakageArea4M2 * lblStack(ceilingAndFloor, ceilingLessFloor, heightM) * Math.sqrt(differenceK),
                leakageArea4M2 * lblWind(ceilingAndFloor, heightM, shelter, terrain) * windMPerS);
    }

    /** Normalised leakage of ASHRAE 62.2: 1000·(ELA/A)·(H/2.5 m)^0.4. */
    static double normalisedLeakage(double leakageArea4M2, double floorAreaM2, double heightM) {
        return 1000 * leakageArea4M2 / floorAreaM2 * storeyFactorOfHeight(heightM);
    }

    /** The year's effective infiltration of ASHRAE 62.2, m³/s: NL·wsf·A/1.44 in L/s. */
    static double standardYearM3PerS(double normalisedLeakage, double weatherFactor, double floorAreaM2) {
        return normalisedLeakage * weatherFactor * floorAreaM2 / 1440;
    }

    /** The same in the short form of weatherisation work: 0.052·Q50·wsf·S. */
    static double standardYearShortM3PerS(double airflow50M3PerS, double weatherFactor, double storeyFactor) {
        return 0.052 * airflow50M3PerS * weatherFactor * storeyFactor;
    }

    /** The factor S for the height of a house. */
    static double storeyFactorOfHeight(double heightM) {
        return storeyFactor(heightM / STANDARD_STOREY_M);
    }

    /** The factor S for a number of storeys, or of standard storey heights. */
    static double storeyFactor(double storeys) {
        return Math.pow(storeys, 0.4);
    }
}
