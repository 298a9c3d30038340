package oakum.physics.weather;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import oakum.physics.moistair.MoistAir;

/** Invented years that are always on the shelf, so that examples, tests and docs need no weather from elsewhere. */
public final class BundledYears {
    /** January first: mean temperature in °C and vapour pressure in Pa. */
    private static final double[][] COLD_A = {
        {-10, 207.5}, {-8, 241.3}, {-2, 387.8}, {5, 610.3}, {12, 953.2}, {17, 1355.7},
        {20, 1682.6}, {19, 1647.1}, {14, 1246.2}, {8, 857.8}, {1, 538.2}, {-7, 276.8}
    };

    private static final double[] DAILY_RANGE_K = {8, 9, 9, 10, 11, 11, 11, 11, 10, 9, 7, 7};
    private static final double[] DAILY_DEVIATION_K = {5.5, 5, 4.5, 4, 3.5, 3, 2.5, 2.5, 3, 3.5, 4, 5};
    private static final double[] GLOBAL_W_PER_M2 = {62, 103, 156, 200, 240, 264, 260, 220, 162, 102, 60, 48};
    private static final double[] WIND_M_PER_S = {3.6, 3.6, 3.9, 4.1, 3.8, 3.3, 3.0, 2.9, 3.2, 3.6, 3.8, 3.6};
    private static final double[] PRECIPITATION_KG_PER_M2 = {30, 25, 38, 52, 78, 98, 95, 86, 80, 62, 45, 34};

    static final WeatherShelf SHELF = BundledYears::find;

    private BundledYears() {}

    /** Computed once, when first asked for. */
    private static final class Held {
        static final Place PLACE = new Place("Cold-A, an invented cold place", 47, -90, 300, -6);

        static final List<HourlyWeather> ALL = List.of(
                SyntheticYear.of(
                        PLACE,
                        "Cold-A, an invented climate. Twelve months of temperature and vapour pressure; sun, wind, rain and"
                                + " the swing of days are assumed to go with them",
                        coldA(0)),
                SyntheticYear.of(
                        PLACE,
                        "Cold-A without days: no good and bad days, day and night, sun, wind or rain; for comparing"
                                + " programs",
                        smooth()));

        private static SyntheticYear.Normals smooth() {
            return new SyntheticYear.Normals(coldA(0).months().stream()
                    .map(m ->
                            new SyntheticYear.Month(m.meanTemperatureC(), 0, m.vapourPressurePa(), 0, null, null, null))
                    .toList());
        }
    }

    /** Every bundled year. */
    public static List<HourlyWeather> all() {
        return Held.ALL;
    }

    /** The year of the invented climate Cold-A: January −10 °C, July 20 °C, with sun, wind and rain. */
    public static HourlyWeather coldA() {
        return all().get(0);
    }

    /** The months of Cold-A without days, sun, wind and rain: a smooth year for comparing programs. */
    public static HourlyWeather coldASmooth() {
        return all().get(1);
    }

    /**
     * The normals of Cold-A, every month colder or warmer by the same amount at the same relative humidity over water.
     *
     * @param shiftK added to each mean temperature, −30 to 20
     */
    public static SyntheticYear.Normals coldA(double shiftK) {
        return new SyntheticYear.Normals(IntStream.range(0, COLD_A.length)
                .mapToObj(month -> new SyntheticYear.Month(
                        COLD_A[month][0] + shiftK,
                        DAILY_RANGE_K[month],
                        vapourPressurePa(month, shiftK),
                        DAILY_DEVIATION_K[month],
                        GLOBAL_W_PER_M2[month],
                        WIND_M_PER_S[month],
                        PRECIPITATION_KG_PER_M2[month]))
                .toList());
    }

    private static double vapourPressurePa(int month, double shiftK) {
        double before = MoistAir.saturationPressureOverWaterPa(COLD_A[month][0]);
        double after = MoistAir.saturationPressureOverWaterPa(COLD_A[month][0] + shiftK);
        return COLD_A[month][1] * after / before;
    }

    private static Optional<HourlyWeather> find(String contentHash) {
        return all().stream()
                .filter(year -> year.contentHash().equals(contentHash))
                .findFirst();
    }
}
