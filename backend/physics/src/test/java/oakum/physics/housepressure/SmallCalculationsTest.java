package oakum.physics.housepressure;

import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static oakum.physics.housepressure.TestHouse.CFM;
import static oakum.physics.housepressure.TestHouse.FOOT;
import static oakum.physics.housepressure.TestHouse.INCH;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Notice;
import oakum.physics.duct.DuctSurface;
import org.junit.jupiter.api.Test;

/** Heater, door and dryer duct. */
class SmallCalculationsTest {
    private static final double BTU_PER_H = 1055.05585262 / 3600;
    private static final double INCH_OF_WATER = 249.08891;

    private static double celsius(double fahrenheit) {
        return (fahrenheit - 32) / 1.8;
    }

    private static MakeUpHeater.Result heater(
            double cfm, AirflowCount count, double outC, double humidity, double supplyC) {
        return MakeUpHeater.CALCULATION
                .calculate(new MakeUpHeater.Input(cfm * CFM, count, 0, outC, humidity, supplyC, 240, Phases.SINGLE))
                .output();
    }

    @Test
    void a_heater_for_standard_air() {
        double power =
                heater(600, AirflowCount.STANDARD, celsius(-10), 0, celsius(60)).heaterPowerW();

        row("R-MUA-12", "computed independently")
                .near(power, 13_339, rel(1e-3))
                .near(power / BTU_PER_H, 45_515, rel(1e-3));
        assertThat(power / BTU_PER_H)
                .as("the rule of 1.08 is 0.4 %% lower")
                .isCloseTo(1.08 * 600 * 70, within(0.005 * 45_360));
        row("R-MUA-14", "computed independently")
                .near(
                        heater(1200, AirflowCount.STANDARD, celsius(-10), 0, celsius(60))
                                .heaterPowerW(),
                        26_678,
                        rel(1e-3));
    }

    @Test
    void an_actual_cubic_foot_of_very_cold_air_takes_a_sixth_more() {
        MakeUpHeater.Result result = heater(600, AirflowCount.OUTDOOR, -23.3, 0.7, -23.3 + 70 / 1.8);

        row("R-MUA-13", "computed independently")
                .near(result.densityKgPerM3(), 1.41256, rel(1e-3))
                .near(result.heaterPowerW(), 15_649, rel(1e-3));
    }

    @Test
    void warm_outdoor_air_needs_no_heater() {
        assertThat(heater(600, AirflowCount.STANDARD, 30, 0.5, 16).heaterPowerW())
                .isZero();
    }

    @Test
    void a_door_against_the_house_pressure() {
        Door withCloser = new Door(0.9144, 2.032, 0.07, 30, null);
        Door bare = new Door(0.9144, 2.032, 0.07, 0, null);

        row("R-MUA-17", "IBC 909.6.2 equation (seen), computed independently")
                .near(withCloser.forceN(50), 80.302, rel(1e-4))
                .near(withCloser.forceN(50) / 4.4482216152605, 18.05, rel(5e-4));
        row("R-MUA-18", "IBC 909.6.2 equation (seen), computed independently")
                .near(bare.pressureForForcePa(133), 132.20, rel(1e-4))
                .near(bare.pressureForForcePa(67), 66.60, rel(1e-4));
        assertThat(withCloser.pressureForForcePa(20))
                .as("the closer alone needs more")
                .isZero();
    }

    private static Answer<DryerDuct.Input, DryerDuct.Result> dryer(double cfm) {
        return DryerDuct.CALCULATION.calculate(new DryerDuct.Input(
                cfm * CFM, 4 * INCH, 35 * FOOT, DuctSurface.GALVANISED, 0.6 * INCH_OF_WATER, 20, 0));
    }

    @Test
    void a_dryer_cannot_push_400_cfm_through_its_duct() {
        row("R-MUA-22", "Colebrook equation, computed independently")
                .near(dryer(150).output().dropPa() / INCH_OF_WATER, 0.4485, rel(1e-3))
                .near(dryer(400).output().dropPa() / INCH_OF_WATER, 2.8804, rel(1e-3))
                .near(dryer(400).output().possibleM3PerS() / CFM, 175.2, rel(1e-3));
        assertThat(dryer(400).notices())
                .extracting(Notice::code)
                .contains("dryer-cannot-move-it", "dryer-above-200-cfm", "outside-advised-range");
        assertThat(dryer(135).notices()).isEmpty();
    }
}
