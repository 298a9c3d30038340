package oakum.physics.hygrothermal;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static oakum.physics.hygrothermal.TestWalls.NO_LIQUID;
import static oakum.physics.hygrothermal.TestWalls.TIGHT;
import static oakum.physics.hygrothermal.TestWalls.dry;
import static oakum.physics.hygrothermal.TestWalls.run;
import static oakum.physics.hygrothermal.TestWalls.solid;
import static oakum.physics.hygrothermal.TestWalls.steady;
import static oakum.physics.hygrothermal.TestWalls.wall;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import oakum.physics.moistair.Iso13788Saturation;
import org.junit.jupiter.api.Test;

/** Cases with an answer in closed form: each part of the solver alone. */
class AnalyticTest {
    private static final String CLOSED_FORM = "closed form, computed independently";
    private static final GridRule FINE = new GridRule(0.0005, 1.12, 0.05, 1);

    @Test
    void a_half_space_cools_by_the_error_function() {
        RunResult result = run(
                wall(Face.given(), Face.closed(), solid("half space", 3, dry(0.8), 1.6e6, 0.5)),
                steady(0, 300, 0, 300),
                RunPlan.hours(24)
                        .startingAt(20)
                        .on(FINE)
                        .withSteps(900, 1, 1e-4)
                        .keepingProfilesAt(List.of(24)));
        RunResult.Profile day = result.profiles().get(0);
        double[] depths = {0.02, 0.05, 0.10, 0.20};
        double[] expected = {1.085, 2.701, 5.326, 10.075};
        for (int k = 0; k < 4; k++) {
            row("TR-1", CLOSED_FORM).near(TestWalls.at(day, day.temperatureC(), depths[k]), expected[k], abs(0.03));
        }
        double surfaceFlow = 0.8 * day.temperatureC().get(0) / day.depthM().get(0);
        row("TR-1", CLOSED_FORM).near(surfaceFlow, 43.43, rel(0.01));
    }

    @Test
    void a_slab_under_a_film_cools_by_its_series() {
        double[][] expected = {{12.005, 17.468, 19.074}, {8.518, 12.740, 14.250}, {2.092, 3.131, 3.503}};
        Wall slab = new Wall(
                List.of(solid("slab", 0.1, dry(0.8), 1.6e6, 0.5)),
                Face.film(10, 1e-8),
                Face.closed(),
                List.of(new Plane("middle", 0, 0.05), new Plane("far face", 0, 0.1)),
                List.of());
        int[] hours = {1, 3, 12};
        HygrothermalRun.of(
                        slab,
                        steady(0, 300, 0, 300),
                        RunPlan.hours(12).startingAt(20).on(FINE).withSteps(300, 1, 1e-4))
                .run(
                        hour -> {
                            for (int k = 0; k < 3; k++) {
                                if (hour.hour() == hours[k]) {
                                    row("TR-2", CLOSED_FORM)
                                            .near(hour.insideFaceTemperatureC(), expected[k][0], abs(0.03))
                                            .near(hour.planeTemperatureC(0), expected[k][1], abs(0.03))
                                            .near(hour.planeTemperatureC(1), expected[k][2], abs(0.03));
                                }
                            }
                        },
                        RunControl.NONE);
    }

    @Test
    void a_daily_wave_fades_and_lags_with_depth() {
        double[] ratios = {0.6529, 0.4262, 0.1817};
        double[] lags = {1.629, 3.257, 6.515};
        List<Plane> planes =
                List.of(new Plane("5 cm", 0, 0.05), new Plane("10 cm", 0, 0.10), new Plane("20 cm", 0, 0.20));
        Wall space = new Wall(
                List.of(solid("half space", 3, dry(0.8), 1.6e6, 0.5)), Face.given(), Face.closed(), planes, List.of());
        Climate wave = (hour, fraction, s) -> {
            steady(0, 100, 0, 300).at(hour, fraction, s);
            s.indoorTemperatureC = 10 * Math.sin(2 * Math.PI * (hour + fraction) / 24);
        };
        int days = 20;
        double[] sine = new double[3];
        double[] cosine = new double[3];
        HygrothermalRun.of(
                        space,
                        wave,
                        RunPlan.hours(24 * days).startingAt(0).on(FINE).withSteps(450, 1, 1e-5))
                .run(
                        hour -> {
                            if (hour.hour() > 24 * (days - 1)) {
                                for (int p = 0; p < 3; p++) {
                                    double angle = 2 * Math.PI * hour.hour() / 24;
                                    sine[p] += hour.planeTemperatureC(p) * Math.sin(angle) / 12;
                                    cosine[p] += hour.planeTemperatureC(p) * Math.cos(angle) / 12;
                                }
                            }
                        },
                        RunControl.NONE);
        for (int p = 0; p < 3; p++) {
            row("TR-3", CLOSED_FORM)
                    .near(Math.hypot(sine[p], cosine[p]) / 10, ratios[p], rel(0.005))
                    .near(Math.atan2(-cosine[p], sine[p]) * 24 / (2 * Math.PI), lags[p], rel(0.005));
        }
    }

    @Test
    void vapour_alone_enters_a_half_space_by_the_error_function() {
        LayerProperties linear =
                new TabulatedProperties.Description(h -> 50 * h, h -> 1 / 2e-11, NO_LIQUID, h -> 1e3).overHumidity();
        double saturation = Iso13788Saturation.pressurePa(20);
        RunResult result = run(
                wall(Face.given(), Face.closed(), solid("half space", 0.6, linear, 1e7, 0.5)),
                steady(20, 0.8 * saturation, 20, 1000),
                RunPlan.hours(168)
                        .startingAt(20)
                        .on(new GridRule(0.0002, 1.1, 0.02, 1))
                        .keepingProfilesAt(List.of(168)));
        RunResult.Profile week = result.profiles().get(0);
        double[] depths = {0.005, 0.01, 0.02, 0.05};
        double[] expected = {0.7645, 0.7299, 0.6656, 0.5411};
        for (int k = 0; k < 4; k++) {
            row("TR-4", CLOSED_FORM).near(TestWalls.at(week, week.humidity(), depths[k]), expected[k], abs(0.003));
        }
        row("TR-4", CLOSED_FORM).near(result.balance().waterStoredKgPerM2(), 0.4025, rel(0.01));
    }

    @Test
    void a_dry_block_drinks_with_the_root_of_time() {
        LayerProperties block = new TabulatedProperties.Description(
                        h -> 200 * h, h -> TIGHT, h -> 1e-8 * 200 * h, h -> 1e3)
                .overHumidity();
        RunResult result = run(
                wall(Face.given(), Face.closed(), solid("block", 0.6, block, 1e7, 1e-6)),
                steady(20, Iso13788Saturation.pressurePa(20), 20, 1000),
                RunPlan.hours(24).startingAt(20).on(FINE));

        row("TR-5", CLOSED_FORM)
                .near(result.balance().waterStoredKgPerM2(), 6.633, rel(0.01))
                .near(result.balance().waterStoredKgPerM2() / Math.sqrt(86400), 0.02257, rel(0.01));
    }

    @Test
    void air_through_a_wall_bends_its_temperature_by_the_exponential() {
        Climate through = (hour, fraction, s) -> {
            steady(20, 300, 0, 300).at(hour, fraction, s);
            s.airflowM3PerM2S = 5e-4;
        };
        RunResult result = run(
                wall(Face.given(), Face.given(), solid("board", 0.2, dry(0.04), 1e4, 0.5)),
                through,
                RunPlan.hours(240)
                        .startingAt(10)
                        .on(new GridRule(0.002, 1, 0.002, 1))
                        .keepingProfilesAt(List.of(240)));
        RunResult.Profile end = result.profiles().get(0);
        double[] expected = {18.840, 16.374, 11.134};
        for (int k = 0; k < 3; k++) {
            row("TR-6", CLOSED_FORM)
                    .near(TestWalls.at(end, end.temperatureC(), 0.05 * (k + 1)), expected[k], abs(0.05));
        }
    }

    @Test
    void water_is_neither_made_nor_lost() {
        RunResult result = run(RandomWalls.wall(11), RandomWalls.climate(11), RunPlan.hours(2000));

        RunResult.Balance balance = result.balance();
        double exchanged = balance.waterInKgPerM2() + balance.waterOutKgPerM2();
        row("TR-7", "conservation of mass")
                .near(
                        balance.waterInKgPerM2() - balance.waterOutKgPerM2(),
                        balance.waterStoredKgPerM2(),
                        abs(0.001 * exchanged));
        assertThat(balance.waterErrorOfThroughput()).isLessThan(1e-8);
        assertThat(balance.heatErrorOfThroughput()).isLessThan(1e-6);
    }

    /** Two layers of constant resistance: the line of vapour pressure over resistance, and of temperature likewise. */
    @Test
    void the_steady_state_is_the_straight_line_of_the_monthly_method() {
        LayerProperties inner =
                new TabulatedProperties.Description(h -> 5 * h, h -> 1 / 2e-10, NO_LIQUID, h -> 0.04).overHumidity();
        LayerProperties outer =
                new TabulatedProperties.Description(h -> 5 * h, h -> 50 / 2e-10, NO_LIQUID, h -> 0.13).overHumidity();
        Face tightFilm = Face.film(1 / 0.13, 1e-3);
        RunResult result = run(
                wall(
                        tightFilm,
                        tightFilm,
                        MembraneLayer.constant("membrane", 3),
                        solid("wool", 0.14, inner, 1e5, 0.5),
                        solid("board", 0.012, outer, 1e5, 0.5)),
                steady(20, 1100, 2, 500),
                RunPlan.hours(8760).startingAt(10).withSteps(3600, 1, 1e-6).keepingProfilesAt(List.of(8760)));
        RunResult.Profile end = result.profiles().get(0);
        double sd = 3 + 0.14 + 0.6;
        double resistance = 0.13 + 0.14 / 0.04 + 0.012 / 0.13 + 0.13;
        for (int i = 0; i < end.depthM().size(); i++) {
            double x = end.depthM().get(i);
            double passedSd = 3 + Math.min(x, 0.14) + 50 * Math.max(0, x - 0.14);
            double passedR = 0.13 + Math.min(x, 0.14) / 0.04 + Math.max(0, x - 0.14) / 0.13;
            row("TR-8", "straight lines over s_d and over R")
                    .near(end.temperatureC().get(i), 20 - 18 * passedR / resistance, rel(1e-4))
                    .near(end.vapourPressurePa().get(i), 1100 - 600 * passedSd / sd, rel(1e-4));
        }
    }

    /** A thin wet board whose only heat comes through the room's film: what dries must be paid by that heat. */
    @Test
    void drying_takes_the_latent_heat() {
        LayerProperties wet =
                new TabulatedProperties.Description(h -> 100 * h, h -> 5 / 2e-10, NO_LIQUID, h -> 0.5).overHumidity();
        double[] sensible = new double[1];
        double[] moisture = new double[1];
        Wall board = wall(Face.film(8, 5e-8), Face.closed(), solid("board", 0.02, wet, 1e3, 0.98));
        RunResult result = HygrothermalRun.of(
                        board,
                        steady(20, 0.1 * Iso13788Saturation.pressurePa(20), 0, 300),
                        RunPlan.hours(2000).startingAt(20).withSteps(3600, 1, 1e-5))
                .run(
                        hour -> {
                            sensible[0] += hour.insideHeatJPerM2() - 2.5e6 * hour.insideMoistureKgPerM2();
                            moisture[0] -= hour.insideMoistureKgPerM2();
                        },
                        RunControl.NONE);

        assertThat(moisture[0]).isGreaterThan(1);
        assertThat(result.balance().waterStoredKgPerM2()).isLessThan(-1);
        row("TR-9", CLOSED_FORM).near(sensible[0] / 3600 / moisture[0], 694, rel(0.01));
    }

    @Test
    void a_ventilated_cavity_exchanges_as_computed_by_hand() {
        // 50 air changes an hour in 19 mm at 10 °C, faces closed off by slow films: the room heats the cavity air
        double airflow = 50 * 0.019 / 3600;
        row("CV-1", CLOSED_FORM)
                .near(Constants.AIR_HEAT_CAPACITY_J_PER_M3_K * airflow, 0.318, rel(0.005))
                .near(airflow / (Constants.VAPOUR_GAS_CONSTANT_J_PER_KG_K * 283.15), 2.02e-9, rel(0.005));

        LayerProperties board =
                new TabulatedProperties.Description(h -> 5 * h, h -> 1 / 2e-10, NO_LIQUID, h -> 100).overHumidity();
        Climate vented = (hour, fraction, s) -> {
            steady(30, 800, 10, 800).at(hour, fraction, s);
            s.cavityAirChangesPerHour = 50;
        };
        Wall wall = new Wall(
                List.of(
                        solid("board", 0.01, board, 1e4, 0.5),
                        new AirLayer("cavity", 0.019, 8, 5e-8, true, 0.5),
                        solid("cladding", 0.01, board, 1e4, 0.5)),
                Face.film(1, 1e-8),
                Face.closed(),
                List.of(new Plane("cavity", 1, 0.0095)),
                List.of());
        double[] cavity = new double[1];
        HygrothermalRun.of(wall, vented, RunPlan.hours(500).withSteps(3600, 1, 1e-6))
                .run(hour -> cavity[0] = hour.planeTemperatureC(0), RunControl.NONE);
        double inward = 1 / (1 + 0.0001 + 1.0 / 8);
        row("CV-1", CLOSED_FORM).near((30 - cavity[0]) * inward / (cavity[0] - 10), 0.318, rel(0.005));
    }
}
