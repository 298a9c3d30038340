package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Refused;
import oakum.physics.moistair.Iso13788Saturation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a run reports, refuses and keeps. */
class HygrothermalRunTest {
    private static final LayerProperties BOARD = new TabulatedProperties.Description(
                    h -> 80 * h, h -> 20 / 2e-10, h -> 1e-10 * 80 * h, h -> 0.12)
            .overHumidity();
    private static final Climate MILD = TestWalls.steady(20, 1100, 5, 600);

    private static SolidLayer board(String name, double humidity) {
        return new SolidLayer(name, 0.02, BOARD, 500, 1600, humidity);
    }

    private static Wall wall(WallLayer... layers) {
        return TestWalls.wall(Face.film(8, 2.5e-8), Face.film(17, 1e-7), layers);
    }

    private static void refuses(Wall wall, Climate climate, RunPlan plan, String field, String... words) {
        assertThatThrownBy(() -> HygrothermalRun.of(wall, climate, plan))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.violations()).anySatisfy(v -> {
                            assertThat(v.field()).isEqualTo(field);
                            assertThat(v.sentence()).contains(words);
                        }));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 500, 1600, 0.5, thicknessM", "-0.01, 500, 1600, 0.5, thicknessM", "40, 500, 1600, 0.5, thicknessM",
        "NaN, 500, 1600, 0.5, thicknessM", "0.02, 0, 1600, 0.5, densityKgPerM3",
                "0.02, 500, NaN, 0.5, heatCapacityJPerKgK",
        "0.02, 500, 1600, 1.01, initialHumidityFraction", "0.02, 500, 1600, -0.1, initialHumidityFraction"
    })
    void a_layer_without_meaning_is_refused_by_name(
            double thickness, double density, double heat, double humidity, String field) {
        refuses(
                wall(board("good board", 0.5), new SolidLayer("odd board", thickness, BOARD, density, heat, humidity)),
                MILD,
                RunPlan.hours(24),
                "layers[1]." + field,
                "odd board");
    }

    @Test
    void a_material_curve_that_falls_is_refused() {
        LayerProperties falling = new TabulatedProperties.Description(
                        h -> 50 * h - 30 * h * h * h, h -> 1e10, h -> 0, h -> 0.1)
                .overHumidity();

        refuses(
                wall(new SolidLayer("falling", 0.02, falling, 500, 1600, 0.5)),
                MILD,
                RunPlan.hours(24),
                "layers[0].properties.water",
                "falling",
                "must rise");
    }

    @Test
    void a_membrane_whose_points_do_not_rise_is_refused() {
        refuses(
                wall(
                        board("board", 0.5),
                        new MembraneLayer(
                                "smart sheet",
                                List.of(new MembraneLayer.Point(0.5, 4), new MembraneLayer.Point(0.4, 1))),
                        board("board", 0.5)),
                MILD,
                RunPlan.hours(24),
                "layers[1].points[1].meanHumidityFraction",
                "smart sheet",
                "0.4");
    }

    @Test
    void a_climate_with_a_hole_is_refused_by_its_hour() {
        Climate holed = (hour, fraction, s) -> {
            MILD.at(hour, fraction, s);
            s.outdoorVapourPa = hour == 17 ? Double.NaN : 600;
        };
        refuses(wall(board("board", 0.5)), holed, RunPlan.hours(24), "climate[17].outdoorVapourPa", "hour 17", "NaN");
    }

    @Test
    void a_wall_of_membranes_only_is_refused() {
        refuses(wall(MembraneLayer.constant("sheet", 1)), MILD, RunPlan.hours(24), "layers", "solid");
    }

    @Test
    void a_source_in_a_membrane_is_refused() {
        Wall wall = new Wall(
                List.of(board("board", 0.5), MembraneLayer.constant("sheet", 1)),
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-7),
                List.of(),
                List.of(new MoistureSource(MoistureSource.Kind.RAIN, 1, MoistureSource.Side.OUTER, 0.005, 0.01)));

        refuses(wall, MILD, RunPlan.hours(24), "sources[0].layer", "no thickness");
    }

    /** The climate leaps to where the equations have no solution, after the check has seen its hours. */
    @Test
    void a_run_that_cannot_go_on_says_where_and_when_and_keeps_what_it_has() {
        Climate broken = (hour, fraction, s) -> {
            MILD.at(hour, fraction, s);
            if (hour >= 30 && fraction > 0 && fraction < 1) {
                s.outdoorEquivalentC = Double.NaN;
            }
        };
        RunResult result = TestWalls.run(wall(board("inner", 0.5), board("outer", 0.5)), broken, RunPlan.hours(48));

        assertThat(result.outcome()).isEqualTo(RunResult.Outcome.NOT_CONVERGED);
        assertThat(result.hoursDone()).isEqualTo(30);
        assertThat(result.stop()).isNotNull();
        assertThat(result.stop().hour()).isEqualTo(30);
        assertThat(result.stop().layer()).isIn("inner", "outer");
        assertThat(result.days()).hasSize(1);
        assertThat(result.layers()).allSatisfy(l -> assertThat(l.endKgPerM2()).isFinite());
        assertThat(result.balance().waterErrorOfThroughput()).isLessThan(1e-8);
    }

    @Test
    void progress_is_told_every_day_and_can_end_the_run() {
        List<Integer> told = new ArrayList<>();
        RunResult result = HygrothermalRun.of(wall(board("board", 0.5)), MILD, RunPlan.hours(240))
                .run(HourSink.NONE, (done, of) -> {
                    told.add(done);
                    return done < 72;
                });

        assertThat(told).containsExactly(24, 48, 72);
        assertThat(result.outcome()).isEqualTo(RunResult.Outcome.CANCELLED);
        assertThat(result.hoursDone()).isEqualTo(72);
        assertThat(result.days()).hasSize(3);
    }

    @Test
    void hours_stream_through_one_object() {
        List<HourView> views = new ArrayList<>();
        HygrothermalRun.of(wall(board("board", 0.5)), MILD, RunPlan.hours(24)).run(views::add, RunControl.NONE);

        assertThat(views).hasSize(24).allMatch(v -> v == views.get(0));
    }

    @Test
    void built_in_moisture_dries_to_both_sides_and_is_reported() {
        SolidLayer wet = board("wet", 0.5).startingWithWater(70);
        RunResult result = TestWalls.run(
                wall(wet),
                TestWalls.steady(20, 900, 20, 900),
                RunPlan.hours(2 * 8760).startingAt(20));
        RunResult.LayerResult layer = result.layers().get(0);

        assertThat(layer.startKgPerM2()).isCloseTo(70 * 0.02, within(1e-6));
        assertThat(layer.peakMassPercent()).isCloseTo(14, within(0.1));
        assertThat(layer.peakHour()).isZero();
        double end = 80 * 900 / Iso13788Saturation.pressurePa(20) * 0.02;
        assertThat(layer.endKgPerM2()).isCloseTo(end, within(1e-3));
        assertThat(result.yearsToBalance()).isEqualTo(2);
        assertThat(result.days()).hasSize(730);
    }

    @Test
    void drying_tells_its_direction() {
        SolidLayer wet = board("wet", 0.95);
        RunResult toTheRoom = TestWalls.run(
                wall(wet, MembraneLayer.constant("foil", 1500)),
                TestWalls.steady(20, 900, 20, 900),
                RunPlan.hours(1000).startingAt(20));

        RunResult.Drying drying = toTheRoom.layers().get(0).lastYear();
        assertThat(drying.inwardShare()).isGreaterThan(0.99);
        assertThat(drying.throughInnerFaceKgPerM2() + drying.throughOuterFaceKgPerM2())
                .isCloseTo(
                        toTheRoom.layers().get(0).startKgPerM2()
                                - toTheRoom.layers().get(0).endKgPerM2(),
                        within(1e-9));
    }

    @Test
    void rain_wets_a_thirsty_face_and_runs_off_a_coated_one() {
        Climate rain = (hour, fraction, s) -> {
            TestWalls.steady(20, 1000, 10, 1000).at(hour, fraction, s);
            s.rainKgPerM2S = 1.0 / 3600;
        };
        RunResult bare = TestWalls.run(wall(board("board", 0.5)), rain, RunPlan.hours(24));
        RunResult coated =
                TestWalls.run(wall(board("board", 0.5), MembraneLayer.constant("paint", 0.1)), rain, RunPlan.hours(24));

        assertThat(bare.balance().waterStoredKgPerM2()).isPositive();
        assertThat(bare.runOffKgPerM2()).isBetween(20.0, 24.0);
        assertThat(coated.runOffKgPerM2()).isCloseTo(24, within(1e-9));
    }

    @Test
    void a_share_of_the_rain_lands_where_it_is_told_to() {
        Climate rain = (hour, fraction, s) -> {
            TestWalls.steady(20, 1000, 20, 1000).at(hour, fraction, s);
            s.rainKgPerM2S = 0.5 / 3600;
        };
        WallLayer[] layers = {
            board("inner", 0.5),
            MembraneLayer.constant("sheet", 1000),
            board("outer", 0.5),
            MembraneLayer.constant("paint", 1000)
        };
        Wall wall = new Wall(
                List.of(layers),
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-7),
                List.of(),
                List.of(new MoistureSource(MoistureSource.Kind.RAIN, 2, MoistureSource.Side.INNER, 0.005, 0.01)));
        RunResult result = TestWalls.run(wall, rain, RunPlan.hours(20));

        assertThat(result.layers().get(2).endKgPerM2() - result.layers().get(2).startKgPerM2())
                .isCloseTo(0.01 * 0.5 * 20, within(1e-3));
        assertThat(result.runOffKgPerM2()).isCloseTo(0.99 * 0.5 * 20, within(1e-3));
    }

    /** The published formula by hand: 0.01347 m³/(m²h) of air of 20 °C and 50 % to a place at −8 °C. */
    @Test
    void leaking_air_leaves_what_it_cannot_hold() {
        Climate leak = (hour, fraction, s) -> {
            TestWalls.steady(-8, 100, -8, 100).at(hour, fraction, s);
            s.indoorTemperatureC = -8;
            s.leakM3PerM2S = 0.01347 / 3600;
            // the room's air: its vapour density is that of 20 °C and 50 %
            s.indoorVapourPa = 0.00863 * 461.5 * 265.15;
        };
        WallLayer[] layers = {MembraneLayer.constant("foil", 10000), board("sheathing", 0.5)};
        Wall wall = new Wall(
                List.of(layers),
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-12),
                List.of(),
                List.of(new MoistureSource(MoistureSource.Kind.AIR_LEAK, 1, MoistureSource.Side.INNER, 0.005, 1)));
        RunResult result = TestWalls.run(wall, leak, RunPlan.hours(24).startingAt(-8));

        assertThat(result.balance().waterStoredKgPerM2()).isCloseTo(0.00197, within(0.00003));
    }

    @Test
    void frost_counts_cold_damp_hours() {
        Climate cold = TestWalls.steady(-5, 400, -5, 400);

        assertThat(TestWalls.run(
                                wall(board("damp", 0.99)),
                                cold,
                                RunPlan.hours(24).startingAt(-5))
                        .frostHours())
                .isEqualTo(24);
        assertThat(TestWalls.run(
                                wall(board("dry", 0.5)),
                                TestWalls.steady(-5, 200, -5, 200),
                                RunPlan.hours(24).startingAt(-5))
                        .frostHours())
                .isZero();
    }
}
