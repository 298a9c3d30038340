package oakum.physics.moistair;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoistAirTest {
    private static final double SEA_LEVEL = MoistAir.STANDARD_PRESSURE_PA;
    private static final String TABLES =
            "ASHRAE Fundamentals 2017 ch. 1 tables 1 to 3, as quoted in an open library's tests, seen";
    private static final String COMPUTED = "computed by an open psychrometric library and by own code";

    @ParameterizedTest
    @CsvSource({
        "R-PSY-02, -20, 103.24",
        "R-PSY-03, 5, 872.6",
        "R-PSY-04, 25, 3169.7",
        "R-PSY-05, 50, 12351.3",
        "R-PSY-06, 100, 101418.0"
    })
    void saturation_pressure_is_that_of_the_tables(String id, double temperatureC, double expected) {
        row(id, TABLES).near(MoistAir.saturationPressurePa(temperatureC), expected, rel(3e-4));
    }

    @Test
    void saturation_pressure_in_deep_cold_is_that_of_the_tables() {
        row("R-PSY-01", TABLES).near(MoistAir.saturationPressurePa(-60), 1.08, abs(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        "R-PSY-34, -30, 38.0157",
        "R-PSY-35, -10, 259.9029",
        "R-PSY-36, -1, 562.6715",
        "R-PSY-37, 0.01, 611.6570",
        "R-PSY-38, 10, 1227.9953",
        "R-PSY-39, 20, 2338.8037",
        "R-PSY-40, 40, 7383.4600"
    })
    void saturation_pressure_is_that_of_the_formula(String id, double temperatureC, double expected) {
        row(id, COMPUTED).near(MoistAir.saturationPressurePa(temperatureC), expected, rel(1e-5));
    }

    @ParameterizedTest
    @CsvSource({
        "R-PSY-07, -20, 0.0006373, 0.01",
        "R-PSY-08, 5, 0.005425, 0.005",
        "R-PSY-09, 25, 0.020173, 0.005",
        "R-PSY-10, 50, 0.086863, 0.01"
    })
    void saturated_humidity_ratio_is_near_that_of_the_tables(
            String id, double temperatureC, double expected, double tolerance) {
        row(id, TABLES).near(MoistAir.saturatedHumidityRatio(temperatureC, SEA_LEVEL), expected, rel(tolerance));
    }

    @ParameterizedTest
    @CsvSource({"R-PSY-11, -20, -18542", "R-PSY-12, 25, 76504"})
    void saturated_enthalpy_is_near_that_of_the_tables(String id, double temperatureC, double expected) {
        double saturated = MoistAir.saturatedHumidityRatio(temperatureC, SEA_LEVEL);

        row(id, TABLES).near(MoistAir.enthalpyJPerKg(temperatureC, saturated), expected, rel(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        "R-PSY-13, 0, 101325, 1",
        "R-PSY-14, 500, 95461, 1",
        "R-PSY-15, 1000, 89875, 1",
        "R-PSY-16, 4000, 61640, 1",
        "R-PSY-45, 290, 97889.33, 0.5",
        "R-PSY-46, 1609.34, 83427.55, 0.5"
    })
    void standard_pressure_over_altitude(String id, double altitudeM, double expected, double tolerance) {
        row(id, id.compareTo("R-PSY-40") < 0 ? TABLES : COMPUTED)
                .near(StandardAtmosphere.pressurePa(altitudeM), expected, abs(tolerance));
        assertThat(StandardAtmosphere.altitudeM(StandardAtmosphere.pressurePa(altitudeM)))
                .isCloseTo(altitudeM, within(1e-6));
    }

    @Test
    void station_pressure_reduced_to_sea_level() {
        double reduced = StandardAtmosphere.seaLevelPressurePa(101226.5, 105, 17.19);

        row("R-PSY-22", "an open library's test, seen; form from memory").near(reduced, 102484.0, abs(1));
        assertThat(StandardAtmosphere.stationPressurePa(reduced, 105, 17.19)).isCloseTo(101226.5, within(1e-6));
    }

    @Test
    void humidity_ratio_from_wet_and_iced_bulb() {
        row("R-PSY-19", "an open library's test, seen")
                .near(MoistAir.humidityRatioFromWetBulb(30, 25, 95461), 0.0192281274, rel(3e-4));
        row("R-PSY-20", "an open library's test, seen")
                .near(MoistAir.humidityRatioFromWetBulb(-1, -5, 95461), 0.0012039982, rel(3e-4));
    }

    @Test
    void volume_density_and_enthalpy() {
        row("R-PSY-21", "an open library's test, seen")
                .near(MoistAir.volumeM3PerKg(30, 0.02, 95461), 0.940855, rel(3e-4))
                .near(MoistAir.densityKgPerM3(30, 0.02, 95461), 1.084120, rel(3e-4))
                .near(MoistAir.enthalpyJPerKg(30, 0.02), 81316, rel(3e-4));
    }

    @Test
    void state_from_dry_and_wet_bulb_of_the_handbook_example() {
        double w = MoistAir.humidityRatioFromWetBulb(40, 20, SEA_LEVEL);

        row("R-PSY-17", "ASHRAE Fundamentals 2017 ch. 1 example 1, as quoted in an open library's tests, seen")
                .near(w, 0.0065, abs(2e-4))
                .near(MoistAir.dewPointC(MoistAir.vapourPressurePa(w, SEA_LEVEL)), 7, abs(0.5))
                .near(100 * MoistAir.relativeHumidity(40, w, SEA_LEVEL), 14, abs(1))
                .near(MoistAir.enthalpyJPerKg(40, w) / 1000, 56.7, abs(0.1))
                .near(MoistAir.volumeM3PerKg(40, w, SEA_LEVEL), 0.896, rel(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        "R-PSY-24, 21, 0.40, 101325, 995.067, 0.0061684, 6.899, 13.127, 36.7941, 0.841557, 1.195603",
        "R-PSY-25, 22, 0.30, 101325, 793.426, 0.0049086, 3.645, 12.284, 34.6092, 0.842725, 1.192452",
        "R-PSY-26, 20, 0.50, 101325, 1169.402, 0.0072617, 9.272, 13.784, 38.5517, 0.840156, 1.198898",
        "R-PSY-27, 24, 0.60, 101325, 1791.076, 0.0111917, 15.763, 18.605, 52.6340, 0.856939, 1.180004",
        "R-PSY-28, -15, 0.80, 101325, 132.240, 0.0008128, -17.396, -15.455, -13.0799, 0.732265, 1.366736",
        "R-PSY-29, 0, 0.90, 101325, 550.038, 0.0033946, -1.273, -0.572, 8.4900, 0.778026, 1.289668",
        "R-PSY-30, 35, 0.40, 101325, 2251.128, 0.0141317, 19.385, 23.935, 71.4732, 0.892788, 1.135915",
        "R-PSY-31, 21, 0.35, 97770, 870.683, 0.0055885, 4.970, 12.231, 35.3210, 0.871352, 1.154055",
        "R-PSY-32, 10, 0.75, 95461, 920.996, 0.0060589, 5.778, 7.786, 25.3260, 0.859699, 1.170246",
        "R-PSY-33, 30, 0.70, 89875, 2972.221, 0.0212716, 23.928, 25.368, 84.5671, 1.001312, 1.019934"
    })
    void state_from_dry_bulb_and_relative_humidity(
            String id,
            double dryBulbC,
            double relativeHumidity,
            double pressurePa,
            double vapourPressurePa,
            double humidityRatio,
            double dewPointC,
            double wetBulbC,
            double enthalpyKJ,
            double volume,
            double density) {
        double w = MoistAir.humidityRatio(dryBulbC, relativeHumidity, pressurePa);
        double vapour = MoistAir.vapourPressurePa(w, pressurePa);

        row(id, COMPUTED)
                .near(vapour, vapourPressurePa, rel(1e-4))
                .near(w, humidityRatio, rel(1e-4))
                .near(MoistAir.dewPointC(vapour), dewPointC, abs(0.005))
                .near(MoistAir.wetBulbC(dryBulbC, w, pressurePa), wetBulbC, abs(0.01))
                .near(MoistAir.enthalpyJPerKg(dryBulbC, w) / 1000, enthalpyKJ, abs(0.005))
                .near(MoistAir.volumeM3PerKg(dryBulbC, w, pressurePa), volume, rel(1e-4))
                .near(MoistAir.densityKgPerM3(dryBulbC, w, pressurePa), density, rel(1e-4));
    }

    @Property
    void wet_bulb_and_dew_point_invert_the_direct_formulas(
            @ForAll @DoubleRange(min = -60, max = 95) double dryBulbC,
            @ForAll @DoubleRange(min = 0.01, max = 1) double relativeHumidity,
            @ForAll @DoubleRange(min = 60_000, max = 108_000) double pressurePa) {
        net.jqwik.api.Assume.that(MoistAir.saturationPressurePa(dryBulbC) < 0.9 * pressurePa);
        double w = MoistAir.humidityRatio(dryBulbC, relativeHumidity, pressurePa);
        double vapour = MoistAir.vapourPressurePa(w, pressurePa);
        double wetBulb = MoistAir.wetBulbC(dryBulbC, w, pressurePa);
        double dewPoint = MoistAir.dewPointC(vapour);

        // saturation over ice reaches to 0.01 °C and the wet bulb's iced form to 0 °C: in between they differ by 1e-4
        double seam = Math.abs(wetBulb) < 0.01 ? 2e-4 * w : 0;
        assertThat(MoistAir.humidityRatioFromWetBulb(dryBulbC, wetBulb, pressurePa))
                .isCloseTo(w, within(seam + 1e-9 * (1 + w)));
        assertThat(MoistAir.saturationPressurePa(dewPoint)).isCloseTo(vapour, within(1e-5 * vapour));
        assertThat(wetBulb).isLessThanOrEqualTo(dryBulbC + 1e-3);
        assertThat(dewPoint).isLessThanOrEqualTo(dryBulbC + 1e-3);
    }

    @Test
    void dry_air_has_no_dew_point() {
        assertThatThrownBy(() -> MoistAir.dewPointC(0)).hasMessageContaining("no dew point");
    }
}
