package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import oakum.physics.moistair.Iso13788Saturation;
import org.junit.jupiter.api.Test;

/** Finer steps and finer grids come nearer at the order that the method promises. */
class ConvergenceTest {
    /**
     * A smooth climate that never condenses and never freezes, growing out of the start: with hourly kinks, jumps or a
     * moving edge of saturation no method keeps its order.
     */
    private static final Climate SMOOTH = (hour, fraction, s) -> {
        double angle = 2 * Math.PI * (hour + fraction) / 24;
        double grown = 1 - Math.exp(-Math.pow((hour + fraction) / 12, 2));
        double start = 0.7 * Iso13788Saturation.pressurePa(12);
        s.outdoorTemperatureC = 12 + grown * (-3 + 4 * Math.sin(angle));
        s.outdoorEquivalentC = 12 + grown * (-3 + 6 * Math.sin(angle));
        s.outdoorVapourPa = start + grown * (450 - start + 40 * Math.cos(angle));
        s.indoorTemperatureC = 12 + grown * 9;
        s.indoorVapourPa = start + grown * (1000 - start + 200 * Math.sin(angle + 1));
    };

    private static final SolidLayer BOARD = RandomWalls.wood(new Random(5), "board", 0.04, 600, 450, 0.7);

    /** Three numbers an hour over the last day: temperature and humidity inside the board, water in all of it. */
    private static double[] lastDay(GridRule grid, double stepS) {
        double[] found = new double[3 * 24];
        Wall wall = new Wall(
                List.of(BOARD),
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-7),
                List.of(new Plane("quarter", 0, 0.01)),
                List.of());
        HygrothermalRun.of(
                        wall, SMOOTH, RunPlan.hours(240).startingAt(12).on(grid).withSteps(stepS, 10, 1e-8))
                .run(
                        hour -> {
                            int at = 3 * (hour.hour() % 24);
                            found[at] = hour.planeTemperatureC(0);
                            found[at + 1] = hour.planeHumidity(0) * 50;
                            found[at + 2] = hour.waterKgPerM2() * 10;
                        },
                        RunControl.NONE);
        return found;
    }

    private static double distance(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += (a[k] - b[k]) * (a[k] - b[k]);
        }
        return Math.sqrt(sum / a.length);
    }

    @Test
    void steps_converge_at_second_order() {
        GridRule grid = new GridRule(0.0005, 1.2, 0.005, 1);
        double[] finest = lastDay(grid, 28.125);
        double before = distance(lastDay(grid, 3600), finest);
        for (double step : new double[] {1800, 900, 450}) {
            double error = distance(lastDay(grid, step), finest);
            double order = Math.log(before / error) / Math.log(2);
            System.out.printf("step %.0f s: error %.2e, order %.2f%n", step, error, order);
            assertThat(order).as("order at %s s", step).isBetween(1.7, 2.4);
            before = error;
        }
    }

    @Test
    void grids_converge_at_second_order() {
        GridRule grid = new GridRule(0.0005, 1, 0.0005, 1);
        double[] finest = lastDay(grid.refined(16), 3600);
        double before = distance(lastDay(grid, 3600), finest);
        for (int parts : new int[] {2, 4}) {
            double error = distance(lastDay(grid.refined(parts), 3600), finest);
            double order = Math.log(before / error) / Math.log(2);
            System.out.printf("%d parts: error %.2e, order %.2f%n", parts, error, order);
            assertThat(order).as("order with %s parts", parts).isBetween(1.6, 2.6);
            before = error;
        }
    }

    @Test
    void the_board_is_really_moved_by_its_climate() {
        double[] state = lastDay(GridRule.usual(), 3600);

        assertThat(Math.abs(state[0] - state[3 * 12])).isGreaterThan(1);
        assertThat(state[1] / 50).isLessThan(0.7);
    }
}
