package oakum.physics.hygrothermal;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import oakum.physics.moistair.Iso13788Saturation;
import org.junit.jupiter.api.Test;

/** The benchmark of EN 15026:2007 Annex A (Annex B of the 2023 edition): a half space whose surface gets warm and damp. */
class En15026Test {
    private static final String STANDARD =
            "EN 15026 Annex A, reference values as an open test log quotes them, seen; days 7 and 30 and the depths"
                    + " between: two independent programs";
    private static final double[] HEAT_DEPTHS_M = {0.5, 1, 1.5, 2, 2.5, 3, 4, 5};
    private static final double[] WATER_DEPTHS_M = {0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.10};
    private static final double[][] TEMPERATURES = {
        {26.64, 23.84, 21.91, 20.81, 20.29, 20.09, 20.00, 20.00},
        {28.35, 26.75, 25.28, 24.00, 22.93, 22.07, 20.92, 20.35},
        {29.54, 29.06, 28.58, 28.11, 27.64, 27.19, 26.30, 25.47}
    };
    private static final double[][] WATER = {
        {52.19, 43.39, 42.93, 42.92, 42.92, 42.92, 42.92, 42.92},
        {83.08, 53.06, 45.60, 43.52, 43.02, 42.93, 42.92, 42.92},
        {119.74, 106.63, 90.86, 75.64, 64.66, 57.59, 49.82, 46.13}
    };

    /** Water over suction, kg/m³. */
    private static double water(double suctionPa) {
        return 146 / Math.pow(1 + Math.pow(8e-8 * suctionPa, 1.6), 0.375);
    }

    private static double conductivity(double water) {
        double d = water - 73;
        return Math.exp(-39.2619
                + d * (0.0704 + d * (-1.7420e-4 + d * (-2.7953e-6 + d * (-1.1566e-7 + d * 2.5969e-9)))));
    }

    private static double permeability(double water, double kelvin) {
        double dry = 1 - water / 146;
        return 0.018 / (8.314 * kelvin) * 26.1e-6 / 200 * dry / (0.503 * dry * dry + 0.497);
    }

    private static LayerProperties material() {
        DoubleUnaryOperator liquid = s -> conductivity(water(s));
        return new TabulatedProperties.Description(
                        En15026Test::water,
                        // saturated pores are tight to vapour; a table needs a number there
                        s -> 1 / permeability(Math.min(water(s), 145.9999), 293.15),
                        TestWalls.potential(liquid),
                        s -> 1.5 + 0.0158 * water(s))
                .vapourResistivityGrowingPerK(1 / 293.15)
                .overSuction();
    }

    private static RunResult run(GridRule grid) {
        return TestWalls.run(
                TestWalls.wall(
                        Face.given(), Face.closed(), TestWalls.solid("half space", 25, material(), 1.824e6, 0.5)),
                TestWalls.steady(30, 0.95 * Iso13788Saturation.pressurePa(30), 20, 1000),
                RunPlan.hours(8760).startingAt(20).on(grid).keepingProfilesAt(List.of(168, 720, 8760)));
    }

    @Test
    void temperatures_and_water_are_those_of_the_standard() {
        RunResult result = run(new GridRule(0.0003, 1.08, 1, 1));

        double worstK = 0;
        double worstShare = 0;
        for (int day = 0; day < 3; day++) {
            RunResult.Profile profile = result.profiles().get(day);
            for (int k = 0; k < 8; k++) {
                double temperature = TestWalls.at(profile, profile.temperatureC(), HEAT_DEPTHS_M[k]);
                double water = TestWalls.at(profile, profile.waterKgPerM3(), WATER_DEPTHS_M[k]);
                row("EN-1", STANDARD).near(temperature, TEMPERATURES[day][k], abs(0.3));
                row("EN-2", STANDARD).near(water, WATER[day][k], rel(0.025));
                worstK = Math.max(worstK, Math.abs(temperature - TEMPERATURES[day][k]));
                worstShare = Math.max(worstShare, Math.abs(water / WATER[day][k] - 1));
            }
        }
        System.out.printf("EN 15026: within %.3f K of 0.3 and %.2f %% of 2.5 %%%n", worstK, 100 * worstShare);
        assertThat(result.balance().waterErrorOfThroughput()).isLessThan(1e-8);
        assertThat(result.balance().heatErrorOfThroughput()).isLessThan(1e-8);
    }

    @Test
    void profiles_depend_on_depth_over_the_root_of_time_only() {
        RunResult result = run(new GridRule(0.0003, 1.06, 0.25, 1));
        RunResult.Profile month = result.profiles().get(1);
        RunResult.Profile year = result.profiles().get(2);
        double stretch = Math.sqrt(365.0 / 30);

        row("EN-3", "similarity of the half space, computed independently")
                .near(
                        TestWalls.at(month, month.waterKgPerM3(), 0.01),
                        TestWalls.at(year, year.waterKgPerM3(), 0.01 * stretch),
                        rel(0.005))
                .near(
                        TestWalls.at(month, month.temperatureC(), 1),
                        TestWalls.at(year, year.temperatureC(), stretch),
                        rel(0.005));
    }

    @Test
    void material_functions_have_the_printed_points() {
        double[] suction = {1e5, 1e6, 5e6, 1e7, 5e7, 1e8};
        double[] water = {145.976, 145.049, 135.060, 119.663, 61.136, 41.377};
        double[] liquid = {1.640e-15, 1.383e-15, 3.613e-16, 1.255e-16, 3.768e-18, 7.223e-19};
        double[] waters = {50, 73, 100, 130};
        double[] vapour = {8.868e-13, 7.736e-13, 5.551e-13, 2.099e-13};
        LayerProperties tables = material();
        Cells cells = new Cells(1);
        for (int k = 0; k < 6; k++) {
            row("EN-4", "computed independently")
                    .near(water(suction[k]), water[k], rel(0.002))
                    .near(conductivity(water(suction[k])), liquid[k], rel(0.002));
            // the tables that the solver reads hold the same: Θ falls with suction by K
            cells.temperatureC[0] = 20;
            cells.coordinate[0] = -Math.log(suction[k]);
            tables.evaluate(cells, 0, 1);
            row("EN-4", "computed independently")
                    .near(cells.water[0], water[k], rel(0.002))
                    .near(cells.liquidPotentialSlope[0] / suction[k], liquid[k], rel(0.005));
        }
        for (int k = 0; k < 4; k++) {
            row("EN-4", "computed independently").near(permeability(waters[k], 293.15), vapour[k], rel(0.002));
        }
    }
}
