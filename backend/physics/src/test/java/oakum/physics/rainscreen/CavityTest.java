package oakum.physics.rainscreen;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Verdict;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.Iso13788Saturation;
import org.junit.jupiter.api.Test;

class CavityTest {
    private static final String INDEPENDENT = "computed by independent code from the printed equations";
    private static final double PERM = 5.721e-11;
    private static final double COLD_VISCOSITY = 1.73e-5;

    private static Cavity cavity(double depthM, double openingM2PerM, double freeShare) {
        return new Cavity(depthM, 2.7, 1, openingM2PerM, freeShare, openingM2PerM, freeShare, 0.61);
    }

    private static CavityFlow underOnePascal(Cavity cavity) {
        return CavityFlow.under(cavity, 1, 1.204, 1.81e-5);
    }

    @Test
    void openings_and_cavity_share_a_pressure() {
        Cavity wide = cavity(.019, .010, 1);
        CavityFlow flow = underOnePascal(wide);
        row("RS-1", INDEPENDENT)
                .near(1000 * flow.airflowM3PerSM(), 4.393, rel(.005))
                .near(wide.airChangePerH(flow.airflowM3PerSM()), 308, rel(.005))
                .near(flow.cavityPa(), .376, rel(.005))
                .near(flow.openingsPa(), .624, rel(.005))
                .near(flow.velocityMPerS(), .231, rel(.005))
                .near(flow.reynolds(), 584, rel(.005));

        Cavity smallOpenings = cavity(.019, .005, 1);
        CavityFlow small = underOnePascal(smallOpenings);
        row("RS-2", INDEPENDENT)
                .near(1000 * small.airflowM3PerSM(), 2.469, rel(.005))
                .near(smallOpenings.airChangePerH(small.airflowM3PerSM()), 173, rel(.005))
                .near(small.openingsPa(), .789, rel(.005));

        Cavity shallow = cavity(.006, .006, 1);
        CavityFlow slow = underOnePascal(shallow);
        row("RS-3", INDEPENDENT)
                .near(1000 * slow.airflowM3PerSM(), .364, rel(.005))
                .near(shallow.airChangePerH(slow.airflowM3PerSM()), 80.9, rel(.005))
                .near(slow.cavityPa(), .988, rel(.005));
    }

    @Test
    void stack_and_wind_drive_the_air_and_a_mesh_halves_it() {
        double stack = CavityFlow.stackPa(0, 5, 2.7, 1);
        row("RS-4", INDEPENDENT).near(stack, .615, abs(.002));

        double density = 353 / 275.65;
        Cavity open = cavity(.019, .010, 1);
        double still = CavityFlow.under(open, stack, density, COLD_VISCOSITY).airflowM3PerSM();
        row("RS-5", INDEPENDENT).near(1000 * still, 3.20, rel(.005)).near(open.airChangePerH(still), 225, rel(.005));

        double wind = CavityFlow.windPa(.1, 1.29, 3);
        double windy =
                CavityFlow.under(open, stack + wind, density, COLD_VISCOSITY).airflowM3PerSM();
        Cavity meshed = cavity(.019, .010, .5);
        double behindMesh =
                CavityFlow.under(meshed, stack + wind, density, COLD_VISCOSITY).airflowM3PerSM();
        row("RS-6", INDEPENDENT)
                .near(wind, .5805, abs(1e-4))
                .near(1000 * windy, 4.83, rel(.005))
                .near(open.airChangePerH(windy), 339, rel(.005))
                .near(1000 * behindMesh, 2.67, rel(.005))
                .near(meshed.airChangePerH(behindMesh), 187, rel(.005));
    }

    @Test
    void moving_air_is_worth_a_permeance_and_dries_up_to_a_limit() {
        row("RS-7", INDEPENDENT)
                .near(CavityDrying.permeanceKgPerSM2Pa(1, .019, 10) / PERM, .705, rel(.01))
                .near(CavityDrying.permeanceKgPerSM2Pa(10, .019, 10) / PERM, 7.05, rel(.01))
                .near(CavityDrying.permeanceKgPerSM2Pa(100, .019, 10) / PERM, 70.5, rel(.01));

        double outdoor = Iso13788Saturation.vapourDensityKgPerM3(5, .8 * Iso13788Saturation.pressurePa(5));
        row("RS-8", INDEPENDENT)
                .near(1000 * CavityDrying.limitKgPerM2D(cavity(.019, .010, 1), .001, 8, outdoor), 90.5, rel(.01));
    }

    @Test
    void the_sun_drives_its_own_air() {
        Cavity cavity = cavity(.019, .010, 1);
        CavityAir air = CavityAir.balance(cavity, new CavityClimate(0, 20.6, 20, 4.0, .15, 0, 1), 1.81e-5);

        row("RS-10", INDEPENDENT)
                .near(air.meanC(), 10.8, rel(.02))
                .near(air.exitC(), 17.0, rel(.02))
                .near(air.drivePa(), 1.30, rel(.02))
                .near(1000 * air.flow().airflowM3PerSM(), 5.06, rel(.02))
                .near(cavity.airChangePerH(air.flow().airflowM3PerSM()), 355, rel(.02));
        assertThat(air.upward()).isTrue();
    }

    @Test
    void a_cavity_colder_than_outdoors_moves_its_air_down_and_a_shut_one_not_at_all() {
        CavityAir night = CavityAir.balance(cavity(.019, .010, 1), new CavityClimate(10, 5, 10, 4, .1, 0, 1));
        CavityAir shut = CavityAir.balance(cavity(.019, 0, 1), new CavityClimate(0, 20, 20, 4, .1, 2, 1));
        CavityAir still = CavityAir.balance(cavity(.019, .010, 1), new CavityClimate(10, 10, 10, 4, .1, 0, 1));

        assertThat(night.upward()).isFalse();
        assertThat(night.flow().airflowM3PerSM()).isPositive();
        assertThat(shut.flow().airflowM3PerSM()).isZero();
        assertThat(shut.meanC()).isCloseTo(20, within(1e-9));
        assertThat(still.flow().airflowM3PerSM()).isZero();
    }

    @Property
    void the_losses_add_up_to_the_drive_in_laminar_and_turbulent_flow(
            @ForAll @Scale(4) @DoubleRange(min = .003, max = .2) double depthM,
            @ForAll @Scale(4) @DoubleRange(min = .0005, max = .2) double openingM2PerM,
            @ForAll @Scale(4) @DoubleRange(min = .001, max = 200) double drivePa) {
        CavityFlow flow = CavityFlow.under(cavity(depthM, openingM2PerM, 1), drivePa, 1.25, 1.75e-5);

        assertThat(flow.cavityPa() + flow.openingsPa()).isCloseTo(drivePa, within(1e-5 * drivePa));
    }

    @Property
    void a_larger_opening_never_moves_less_air(
            @ForAll @Scale(4) @DoubleRange(min = .003, max = .1) double depthM,
            @ForAll @Scale(4) @DoubleRange(min = .0002, max = .1) double openingM2PerM,
            @ForAll @Scale(4) @DoubleRange(min = 1, max = 3) double larger,
            @ForAll @Scale(4) @DoubleRange(min = -20, max = 60) double solAirC) {
        CavityClimate climate = new CavityClimate(0, solAirC, 20, 4, .15, 0, 1);
        double small = CavityAir.balance(cavity(depthM, openingM2PerM, 1), climate)
                .flow()
                .airflowM3PerSM();
        double large = CavityAir.balance(cavity(depthM, openingM2PerM * larger, 1), climate)
                .flow()
                .airflowM3PerSM();

        assertThat(large).isGreaterThanOrEqualTo(small * (1 - 1e-6));
    }

    @Test
    void turbulent_loss_takes_over_without_a_jump() {
        Cavity deep = cavity(.1, .2, 1);
        double last = 0;
        for (double drive = .001; drive < 5; drive *= 1.05) {
            double flow = CavityFlow.under(deep, drive, 1.25, 1.75e-5).airflowM3PerSM();
            assertThat(flow).isGreaterThan(last);
            if (last > 0) {
                assertThat(flow / last).isLessThan(1.06);
            }
            last = flow;
        }
        assertThat(CavityFlow.under(deep, 5, 1.25, 1.75e-5).reynolds()).isGreaterThan(4000);
    }

    @Test
    void a_deep_cavity_under_strong_wind_is_turbulent() {
        CavityFlow flow = CavityFlow.under(cavity(.05, .05, 1), 5, 1.2, 1.8e-5);

        // bisection by other code with friction 0.3164 Re^-0.25 on twice the depth
        assertThat(1000 * flow.airflowM3PerSM()).isCloseTo(57.562, within(.01));
        assertThat(flow.cavityPa()).isCloseTo(.7258, within(.001));
        assertThat(flow.reynolds()).isCloseTo(7675, within(2.0));
    }

    private static RainScreenCavity.Result year(RainScreenCavity.Cladding cladding, Cavity cavity) {
        return RainScreenCavity.CALCULATION
                .calculate(new RainScreenCavity.Input(
                        cladding,
                        cavity,
                        .7,
                        4,
                        .15,
                        20,
                        .1,
                        300,
                        BelowFreezing.OVER_WATER,
                        List.of(
                                new RainScreenCavity.Month(-8, .8, 3, 40),
                                new RainScreenCavity.Month(18, .7, 2.5, 90))))
                .output();
    }

    @Test
    void a_year_says_its_class_and_what_was_measured() {
        RainScreenCavity.Result boards = year(RainScreenCavity.Cladding.BOARDS, cavity(.019, .010, .5));
        RainScreenCavity.Result brick = year(RainScreenCavity.Cladding.BRICK, cavity(.040, .010, 1));
        RainScreenCavity.Result shut = year(RainScreenCavity.Cladding.BOARDS, cavity(.019, .010, 0));

        assertThat(boards.ventilation()).isEqualTo(CavityVentilation.WELL_VENTILATED);
        assertThat(boards.openings()).isEqualTo(Verdict.PASSES);
        assertThat(boards.leastAirChangePerH()).isBetween(50.0, 1000.0);
        assertThat(boards.months()).hasSize(2);
        assertThat(boards.months().get(1).dryingKgPerM2D()).isPositive();
        assertThat(brick.notices()).extracting(Notice::code).contains("air-change-unlike-measured");
        assertThat(shut.notices()).extracting(Notice::code).contains("cavity-shut");
        assertThat(shut.leastAirChangePerH()).isZero();
        assertThat(shut.openings()).isEqualTo(Verdict.FAILS);
    }

    @Test
    void classes_change_at_500_and_1500_square_millimetres() {
        assertThat(CavityVentilation.of(500e-6)).isEqualTo(CavityVentilation.UNVENTILATED);
        assertThat(CavityVentilation.of(501e-6)).isEqualTo(CavityVentilation.SLIGHTLY_VENTILATED);
        assertThat(CavityVentilation.of(1500e-6)).isEqualTo(CavityVentilation.WELL_VENTILATED);
    }
}
