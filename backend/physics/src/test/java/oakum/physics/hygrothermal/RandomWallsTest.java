package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RandomWallsTest {
    /** The full thousand for a year each is in the benchmarks; {@code -Drandom.walls=1000} runs them here. */
    @Test
    void random_walls_always_converge_and_close_their_accounts() {
        int walls = Integer.getInteger("random.walls", 40);
        int hours = Integer.getInteger("random.hours", 2190);
        double worstWater = 0;
        double worstHeat = 0;
        long steps = 0;
        for (int seed = 0; seed < walls; seed++) {
            RunResult result = TestWalls.run(RandomWalls.wall(seed), RandomWalls.climate(seed), RunPlan.hours(hours));
            assertThat(result.outcome()).as("wall %d: %s", seed, result.stop()).isEqualTo(RunResult.Outcome.FINISHED);
            worstWater = Math.max(worstWater, result.balance().waterErrorOfThroughput());
            worstHeat = Math.max(worstHeat, result.balance().heatErrorOfThroughput());
            steps += result.statistics().steps();
        }
        System.out.printf(
                "%d random walls: %d steps, water closed to %.1e, heat to %.1e%n", walls, steps, worstWater, worstHeat);
        assertThat(worstWater).isLessThan(1e-8);
        assertThat(worstHeat).isLessThan(1e-6);
    }

    @Test
    void the_same_wall_gives_the_same_numbers_again() {
        HygrothermalRun run = HygrothermalRun.of(RandomWalls.wall(3), RandomWalls.climate(3), RunPlan.hours(500));

        assertThat(run.run(HourSink.NONE, RunControl.NONE)).isEqualTo(run.run(HourSink.NONE, RunControl.NONE));
    }
}
