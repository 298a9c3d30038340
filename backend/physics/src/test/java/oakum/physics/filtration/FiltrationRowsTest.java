package oakum.physics.filtration;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import oakum.physics.filtration.FanCurve.OperatingPoint;
import oakum.physics.filtration.FanCurve.Point;
import org.junit.jupiter.api.Test;

/** The filtration rows of the reference sheet; printed in cfm and in. w.c., both of which the plain functions allow. */
class FiltrationRowsTest {
    private static final double CFM = 0.471947e-3;
    private static final double IN_WC = 249.089;
    private static final double FT2 = 0.3048 * 0.3048;
    private static final double IN = 0.0254;
    private static final double FPM = 0.3048 / 60;

    @Test
    void curve_through_four_rated_points() {
        double[] flow = {400, 800, 1200, 1600};
        double[] drop = {.04, .10, .18, .28};

        PowerFit power = PowerFit.through(flow, drop);
        QuadraticFit quadratic = QuadraticFit.through(flow, drop);

        row("R-FIL-01", "computed by own Python")
                .near(power.a(), 9.01865e-06, rel(1e-4))
                .near(power.b(), 1.39831, rel(1e-4))
                .near(power.drop(1100), 0.16142, rel(1e-4))
                .near(quadratic.a(), 7.500e-5, rel(1e-9))
                .near(quadratic.b(), 6.250e-8, rel(1e-9))
                .near(quadratic.drop(1100), 0.15813, rel(1e-4));
    }

    @Test
    void curve_through_three_rated_points() {
        double[] flow = {600, 1000, 1400};
        double[] drop = {.08, .17, .28};

        PowerFit power = PowerFit.through(flow, drop);
        QuadraticFit quadratic = QuadraticFit.through(flow, drop);

        row("R-FIL-02", "computed by own Python")
                .near(power.a(), 6.25146e-06, rel(2e-4))
                .near(power.b(), 1.47830, rel(2e-4))
                .near(power.drop(1100), 0.19592, rel(2e-4))
                .near(quadratic.a(), 8.74300e-05, rel(2e-4))
                .near(quadratic.b(), 8.07405e-08, rel(2e-4))
                .near(quadratic.drop(1100), 0.19387, rel(2e-4));
    }

    @Test
    void media_of_a_deep_and_a_thin_pleat() {
        double deep = FilterFace.mediaAreaM2(20 * IN, 25 * IN, 4 * IN, 0.5 * IN);
        double thin = FilterFace.mediaAreaM2(20 * IN, 25 * IN, 1 * IN, 0.5 * IN);

        row("R-FIL-04", "computed by own Python")
                .near(deep / FT2, 55.664, rel(1e-3))
                .near(thin / FT2, 14.316, rel(1e-3))
                .near(1200 * CFM / deep / FPM, 21.56, rel(1e-3))
                .near(1200 * CFM / thin / FPM, 83.82, rel(1e-3));
    }

    private static DoubleUnaryOperator system(double load) {
        return q -> 2.2e-7 * q * q + load * 0.18 * Math.pow(q / 1200, 1.4);
    }

    private static OperatingPoint settle(FanCurve fan, double load) {
        return fan.against(system(load)).orElseThrow();
    }

    @Test
    void fan_without_speed_control_loses_flow_to_a_loaded_filter() {
        FanCurve fan = new FanCurve.Table(List.of(
                new Point(800, .90),
                new Point(900, .80),
                new Point(1000, .68),
                new Point(1100, .53),
                new Point(1200, .35),
                new Point(1300, .12)));

        OperatingPoint clean = settle(fan, 1);
        OperatingPoint loaded = settle(fan, 2.5);

        row("R-FIL-05", "computed by own Python")
                .near(clean.flow(), 1141.82, rel(5e-4))
                .near(clean.pressure(), 0.4547, rel(5e-4))
                .near(loaded.flow(), 1045.60, rel(5e-4))
                .near(loaded.pressure(), 0.6116, rel(5e-4))
                .near(2.5 * 0.18 * Math.pow(loaded.flow() / 1200, 1.4), 0.3711, rel(5e-4));
    }

    @Test
    void constant_flow_holds_until_the_static_limit_and_pays_in_power() {
        FanCurve fan = new FanCurve.ConstantFlow(1200, 0.80);

        OperatingPoint clean = settle(fan, 1);
        OperatingPoint loaded = settle(fan, 2.5);
        OperatingPoint clogged = settle(fan, 4);

        row("R-FIL-06", "computed by own Python")
                .near(clean.flow(), 1200, rel(5e-4))
                .near(clean.pressure(), 0.4968, rel(5e-4))
                .near(loaded.flow(), 1200, rel(5e-4))
                .near(loaded.pressure(), 0.7668, rel(5e-4))
                .near(clogged.flow(), 1018.08, rel(5e-4))
                .near(clogged.pressure(), 0.80, rel(5e-4));
        row("R-FIL-07", "computed by own Python")
                .near(clean.power(0.40) * CFM * IN_WC, 175.21, rel(1e-3))
                .near(loaded.power(0.40) * CFM * IN_WC, 270.43, rel(1e-3));
    }

    @Test
    void constant_torque_falls_less_steeply() {
        FanCurve fan = FanCurve.ConstantTorque.through(List.of(new Point(0, 1.30), new Point(1000, 0.60)));

        row("R-FIL-08", "computed by own Python")
                .near(settle(fan, 1).flow(), 1174.29, rel(5e-4))
                .near(settle(fan, 2.5).flow(), 1019.20, rel(5e-4));
    }

    @Test
    void what_is_left_for_the_filter() {
        double budget = FilterFace.staticBudgetPa(0.30, .08, .06, .05);

        row("R-FIL-09", "computed by hand").near(budget, 0.110, abs(1e-12)).near(budget * IN_WC, 27.4, abs(0.05));
    }

    @Test
    void dust_caught_in_a_season() {
        row("R-FIL-12", "computed by own Python")
                .near(FilterFace.caughtG(20, 0.85, 1000 * CFM, 90 * 24), 62.388, rel(1e-3));
    }

    private static CoilState.Output coil(double cfm, double temperatureC, double humidity, double coolingW) {
        return CoilState.CALCULATION
                .calculate(new CoilState.Input(cfm * CFM, temperatureC, humidity, coolingW, 0.10, 0))
                .output();
    }

    @Test
    void wet_coil_at_full_airflow() {
        CoilState.Output out = coil(1200, 26.67, 0.5112, 10_551);

        row("R-FIL-13", "computed by own Python")
                .near(out.dryAirKgPerS(), 0.65501, rel(1e-3))
                .near(out.enteringJPerKg() / 1000, 55.335, abs(0.02))
                .near(out.leavingJPerKg() / 1000, 39.227, abs(0.02))
                .near(out.surfaceC(), 13.305, abs(0.02))
                .near(out.leavingC(), 14.642, abs(0.02))
                .near(out.leavingKgPerKg(), 0.009688, rel(1e-3))
                .near(out.condensateKgPerH(), 3.508, rel(1e-3));
    }

    @Test
    void wet_coil_at_half_airflow() {
        CoilState.Output out = coil(600, 26.67, 0.5112, 10_551);

        row("R-FIL-14", "computed by own Python")
                .near(out.dryAirKgPerS(), 0.32751, rel(1e-3))
                .near(out.enteringJPerKg() / 1000, 55.335, abs(0.02))
                .near(out.leavingJPerKg() / 1000, 23.119, abs(0.02))
                .near(out.surfaceC(), 5.478, abs(0.02))
                .near(out.leavingC(), 7.597, abs(0.02))
                .near(out.leavingKgPerKg(), 0.006145, rel(1e-3))
                .near(out.condensateKgPerH(), 5.931, rel(1e-3));
    }

    @Test
    void coil_at_half_airflow_and_cooler_air_comes_near_ice() {
        CoilState.Output out = coil(600, 23.89, 0.50, 10_551);

        row("R-FIL-15", "computed by own Python")
                .near(out.dryAirKgPerS(), 0.33159, rel(1e-3))
                .near(out.enteringJPerKg() / 1000, 47.544, abs(0.02))
                .near(out.leavingJPerKg() / 1000, 15.724, abs(0.02))
                .near(out.surfaceC(), 1.579, abs(0.02))
                .near(out.leavingC(), 3.810, abs(0.02))
                .near(out.leavingKgPerKg(), 0.004734, rel(1e-3))
                .near(out.condensateKgPerH(), 5.375, rel(1e-3))
                .exactly(out.notices().get(0).code(), "coil-near-ice");
    }

    @Test
    void dry_coil_adds_no_moisture() {
        CoilState.Output out = coil(1200, 22, 0.30, 2000);

        row("R-FIL-18", "computed by own Python")
                .near(out.dryAirKgPerS(), 0.67203, rel(1e-3))
                .near(out.leavingJPerKg() / 1000, 31.633, abs(0.02))
                .near(out.wetSurfaceC(), 10.855, abs(0.02))
                .near(out.enteringDewPointC(), 3.645, abs(0.02))
                .near(out.leavingKgPerKg(), 0.004909, rel(1e-3))
                .near(out.leavingC(), 19.068, abs(0.02))
                .near(out.surfaceC(), 18.743, abs(0.02))
                .exactly(out.condensateKgPerH(), 0.0)
                .exactly(out.wet(), false);
    }

    @Test
    void grades_by_the_2017_table() {
        row("R-FIL-16", "ASHRAE 52.2-2017 table 12-1, from memory")
                .exactly(Merv.grade(0.52, 0.87, 0.92, Merv.Edition.ED_2017).getAsInt(), 13)
                .exactly(Merv.grade(0.52, 0.82, 0.92, Merv.Edition.ED_2017).getAsInt(), 12);
    }

    @Test
    void the_same_filter_by_two_editions() {
        row("R-FIL-17", "ASHRAE 52.2-2017 from memory, 52.2-2007 seen as reprinted")
                .exactly(Merv.grade(0.05, 0.15, 0.78, Merv.Edition.ED_2017).getAsInt(), 7)
                .exactly(Merv.grade(0.05, 0.15, 0.78, Merv.Edition.ED_2007).getAsInt(), 8);
    }

    private static RoomParticles tightHouse(double recirculatedM3PerH) {
        return new RoomParticles(35, 850, 0.03, 0.8, 0.3, 0.85, 0.39, recirculatedM3PerH / 3600, 0.85, 0);
    }

    @Test
    void fine_particles_without_and_with_a_running_filter() {
        row("R-PM-01", "computed by own Python")
                .near(tightHouse(0).steadyUgPerM3(), 3.3542, rel(1e-4))
                .near(tightHouse(0).lossPerH(), 0.7200, rel(1e-4));
        row("R-PM-02", "computed by own Python")
                .near(tightHouse(680).steadyUgPerM3(), 1.7250, rel(1e-4))
                .near(tightHouse(680).lossPerH(), 1.4000, rel(1e-4));
    }

    @Test
    void fine_particles_with_cooking() {
        RoomParticles house = new RoomParticles(10, 500, 0.1, 0.72, 0.35, 0.5, 0.3, 500.0 / 3600, 0.6, 5000);

        row("R-PM-03", "computed by own Python")
                .near(house.steadyUgPerM3(), 9.2370, rel(1e-4))
                .near(house.lossPerH(), 1.3500, rel(1e-4));
    }

    @Test
    void clearing_after_smoke() {
        row("R-PM-04", "computed by own Python")
                .near(tightHouse(680).afterUgPerM3(200, 0.5), 100.185, rel(1e-4))
                .near(tightHouse(680).afterUgPerM3(200, 1), 50.619, rel(1e-4))
                .near(tightHouse(680).afterUgPerM3(200, 2), 13.782, rel(1e-4));
    }

    @Test
    void clean_air_from_a_decay_test() {
        double delivered = RoomParticles.deliveryFromDecayM3PerS(28.5, 3.2, 0.45);

        row("R-PM-05", "computed by own Python")
                .near(delivered * 3600, 78.375, rel(1e-4))
                .near(delivered / CFM, 46.13, rel(1e-4));
    }

    @Test
    void clean_air_for_four_people() {
        ParticleBalance.Output out = ParticleBalance.CALCULATION
                .calculate(new ParticleBalance.Input(
                        0,
                        900,
                        0,
                        1,
                        90 * CFM * 3600 / 900,
                        0,
                        0.39,
                        600 * CFM,
                        0.85,
                        0,
                        null,
                        null,
                        4,
                        0.77,
                        30 * CFM))
                .output();

        row("R-PM-06", "form of ASHRAE 241 and its targets from memory, computed by hand")
                .near(out.neededCleanAirM3PerS() / CFM, 120, abs(1e-9))
                .near(out.equivalentCleanAirM3PerS() / CFM, 552, abs(1e-9));
    }
}
