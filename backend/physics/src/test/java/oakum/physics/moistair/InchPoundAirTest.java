package oakum.physics.moistair;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class InchPoundAirTest {
    private static final double SEA_LEVEL_PSI = 14.696;
    private static final String COMPUTED = "computed by an open psychrometric library";

    @Test
    void state_from_dry_and_wet_bulb_of_the_handbook_example() {
        double w = InchPoundAir.humidityRatioFromWetBulb(100, 65, SEA_LEVEL_PSI);

        row("R-PSY-18", "ASHRAE Fundamentals 2017 (I-P) ch. 1 example 1, as quoted in an open library's tests, seen")
                .near(w, 0.00523, abs(1e-3))
                .near(InchPoundAir.dewPointF(w, SEA_LEVEL_PSI), 40, abs(1))
                .near(100 * InchPoundAir.relativeHumidity(100, w, SEA_LEVEL_PSI), 13, abs(1))
                .near(InchPoundAir.enthalpyBtuPerLb(100, w), 29.80, abs(0.1))
                .near(InchPoundAir.volumeFt3PerLb(100, w, SEA_LEVEL_PSI), 14.22, rel(0.01));
    }

    @Test
    void rating_point_of_dehumidifiers() {
        double w = InchPoundAir.humidityRatioFromWetBulb(80, 69.6, SEA_LEVEL_PSI);

        row("R-PSY-23", "rating point of AHAM DH-1-2008, seen on a trade page; relative humidity " + COMPUTED)
                .near(100 * InchPoundAir.relativeHumidity(80, w, SEA_LEVEL_PSI), 59.84, abs(0.1))
                .near(InchPoundAir.dewPointF(w, SEA_LEVEL_PSI), 64.80, abs(0.05));
    }

    @Test
    void room_air() {
        double w = InchPoundAir.humidityRatio(70, 0.35, SEA_LEVEL_PSI);

        row("R-PSY-41", COMPUTED)
                .near(w, 0.0054279, rel(3e-4))
                .near(7000 * w, 37.995, rel(3e-4))
                .near(InchPoundAir.dewPointF(w, SEA_LEVEL_PSI), 41.12, abs(0.02))
                .near(InchPoundAir.wetBulbF(70, w, SEA_LEVEL_PSI), 54.39, abs(0.02))
                .near(InchPoundAir.enthalpyBtuPerLb(70, w), 22.728, rel(3e-4))
                .near(InchPoundAir.volumeFt3PerLb(70, w, SEA_LEVEL_PSI), 13.4695, rel(3e-4));
    }

    @Test
    void winter_air() {
        double w = InchPoundAir.humidityRatio(20, 0.70, SEA_LEVEL_PSI);

        row("R-PSY-42", COMPUTED)
                .near(w, 0.0014993, rel(3e-4))
                .near(7000 * w, 10.495, rel(3e-4))
                .near(InchPoundAir.dewPointF(w, SEA_LEVEL_PSI), 12.70, abs(0.02))
                .near(InchPoundAir.enthalpyBtuPerLb(20, w), 6.404, rel(3e-4));
    }

    @Test
    void limits_of_comfort_and_ventilation_standards() {
        double dewPointC = (60 - 32) / 1.8;
        double w = MoistAir.saturatedHumidityRatio(dewPointC, SEA_LEVEL_PSI * 6894.757);

        row("R-PSY-43", COMPUTED)
                .near(100 * InchPoundAir.relativeHumidity(75, w, SEA_LEVEL_PSI), 59.60, abs(0.1))
                .near(100 * InchPoundAir.relativeHumidity(70, w, SEA_LEVEL_PSI), 70.56, abs(0.1))
                .near(w, 0.011041, rel(5e-4));
        row("R-PSY-44", COMPUTED)
                .near(InchPoundAir.dewPointF(0.012, SEA_LEVEL_PSI), 62.31, abs(0.05))
                .near((InchPoundAir.dewPointF(0.012, SEA_LEVEL_PSI) - 32) / 1.8, 16.84, abs(0.05));
    }

    @Test
    void iced_bulb_inverts_the_direct_formula() {
        double w = InchPoundAir.humidityRatio(25, 0.5, SEA_LEVEL_PSI);
        double bulb = InchPoundAir.wetBulbF(25, w, SEA_LEVEL_PSI);

        assertThat(bulb).isBetween(10.0, 25.0);
        assertThat(InchPoundAir.humidityRatioFromWetBulb(25, bulb, SEA_LEVEL_PSI))
                .isCloseTo(w, within(1e-10));
    }
}
