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

class Iso13788SaturationTest {
    private static final String COMPUTED = "ISO 13788 Annex E, computed by two independent programs";

    @Test
    void saturation_pressure_is_that_of_the_standard() {
        row("PS-1", COMPUTED)
                .near(Iso13788Saturation.pressurePa(-20), 102.7, abs(0.1))
                .near(Iso13788Saturation.pressurePa(-10), 259.3, abs(0.1))
                .near(Iso13788Saturation.pressurePa(-5), 401.2, abs(0.1))
                .near(Iso13788Saturation.pressurePa(0), 610.5, abs(0.1))
                .near(Iso13788Saturation.pressurePa(5), 871.9, abs(0.1));
        row("PS-2", COMPUTED)
                .near(Iso13788Saturation.pressurePa(10), 1227.3, abs(0.1))
                .near(Iso13788Saturation.pressurePa(15), 1704.4, abs(0.1))
                .near(Iso13788Saturation.pressurePa(20), 2337.0, abs(0.1))
                .near(Iso13788Saturation.pressurePa(25), 3165.9, abs(0.1))
                .near(Iso13788Saturation.pressurePa(30), 4240.5, abs(0.1));
    }

    @Test
    void dew_point_of_room_air() {
        row("PS-3", COMPUTED).near(dewPointOf(20, 0.5), 9.27, abs(0.02));
        row("PS-4", COMPUTED).near(dewPointOf(21, 0.4), 6.90, abs(0.02)).near(dewPointOf(20, 0.3), 1.92, abs(0.02));
    }

    @Test
    void suction_of_pore_water() {
        row("PS-5", COMPUTED)
                .near(Iso13788Saturation.suctionPa(20, 0.5), 93.77e6, rel(0.002))
                .near(Iso13788Saturation.suctionPa(20, 0.8), 30.19e6, rel(0.002))
                .near(Iso13788Saturation.suctionPa(20, 0.95), 6.94e6, rel(0.002))
                .near(Iso13788Saturation.suctionPa(20, 0.99), 1.36e6, rel(0.002));
    }

    @Test
    void humidity_that_a_weather_service_counts_over_water_becomes_vapour_pressure() {
        row("PS-6", "ISO 13788 Annex E, computed by one program")
                .near(0.8 * Iso13788Saturation.pressureOverWaterPa(-10), 228.5, abs(0.1))
                .near(0.8 * Iso13788Saturation.pressurePa(-20, BelowFreezing.OVER_WATER), 99.7, abs(0.1));
    }

    @Property
    void dew_point_inverts_saturation(@ForAll @DoubleRange(min = -40, max = 60) double temperatureC) {
        assertThat(Iso13788Saturation.dewPointC(Iso13788Saturation.pressurePa(temperatureC)))
                .isCloseTo(temperatureC, within(1e-9));
    }

    @Property
    void slope_is_that_of_the_curve(@ForAll @DoubleRange(min = -40, max = 60) double temperatureC) {
        org.assertj.core.api.Assumptions.assumeThat(Math.abs(temperatureC)).isGreaterThan(1e-3);
        double h = 1e-4;
        double difference =
                Iso13788Saturation.pressurePa(temperatureC + h) - Iso13788Saturation.pressurePa(temperatureC - h);

        assertThat(Iso13788Saturation.slopePaPerK(temperatureC))
                .isCloseTo(difference / (2 * h), within(1e-5 * difference / (2 * h)));
    }

    @Property
    void stays_near_the_handbook_s_equation(@ForAll @DoubleRange(min = -10, max = 60) double temperatureC) {
        assertThat(Iso13788Saturation.pressurePa(temperatureC) / MoistAir.saturationPressurePa(temperatureC))
                .isCloseTo(1, within(0.0025));
    }

    @Test
    void dry_air_has_no_dew_point() {
        assertThatThrownBy(() -> Iso13788Saturation.dewPointC(0)).hasMessageContaining("no dew point");
    }

    private static double dewPointOf(double temperatureC, double relativeHumidity) {
        return Iso13788Saturation.dewPointC(relativeHumidity * Iso13788Saturation.pressurePa(temperatureC));
    }
}
