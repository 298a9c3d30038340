package oakum.physics.numerics;

import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class TheilSenTest {
    @Test
    void drift_of_a_humidity_sensor() {
        double[] day = {0, 30, 60, 90, 120, 150, 180, 210};
        double[] points = {.2, .5, .7, 1.3, 1.2, 1.8, 2.1, 2.3};

        TheilSen drift = TheilSen.of(day, points, TheilSen.Z_95);

        row("R-SEN-08", "Sen 1968; computed by SciPy")
                .near(drift.slope(), 0.010000, rel(1e-3))
                .near(drift.lowerSlope(), 0.00833, rel(1e-3))
                .near(drift.upperSlope(), 0.01222, rel(1e-3))
                .near(drift.slope() * 365, 3.65, rel(1e-3));
    }

    @Test
    void ties_narrow_the_interval_as_in_a_general_purpose_library() {
        // scipy.stats.theilslopes(y, x, alpha=0.95), SciPy 1.17.1
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
        double[] y = {1.00, 1.01, 1.01, 1.02, 1.05, 1.05, 1.05, 1.09, 1.08, 1.13};

        TheilSen line = TheilSen.of(x, y, TheilSen.Z_95);

        assertThat(line.slope()).isCloseTo(0.012500000000000011, within(1e-12));
        assertThat(line.lowerSlope()).isCloseTo(0.010000000000000009, within(1e-12));
        assertThat(line.upperSlope()).isCloseTo(0.016000000000000014, within(1e-12));
    }

    @Property(tries = 200)
    void one_wild_point_leaves_the_slope_of_an_exact_line_alone(
            @ForAll @DoubleRange(min = -5, max = 5) double slope,
            @ForAll @DoubleRange(min = -100, max = 100) double intercept,
            @ForAll @IntRange(min = 0, max = 11) int wildAt,
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double wild) {
        double[] x = new double[12];
        double[] y = new double[12];
        for (int i = 0; i < 12; i++) {
            x[i] = i;
            y[i] = intercept + slope * i;
        }
        y[wildAt] += wild;

        assertThat(TheilSen.of(x, y, TheilSen.Z_95).slope()).isCloseTo(slope, within(1e-9));
    }

    @Property(tries = 300)
    void selecting_agrees_with_sorting(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -9, max = 9) Integer> values, @ForAll Random random) {
        double[] given = values.stream().mapToDouble(v -> v / 4.0).toArray();
        double[] sorted = given.clone();
        Arrays.sort(sorted);
        int place = random.nextInt(given.length);

        assertThat(Median.select(given.clone(), place)).isEqualTo(sorted[place]);
        assertThat(Median.of(given)).isEqualTo((sorted[(given.length - 1) / 2] + sorted[given.length / 2]) / 2);
    }

    @Test
    void refuses_points_that_all_stand_at_one_x() {
        assertThatThrownBy(() -> TheilSen.of(new double[] {3, 3, 3}, new double[] {1, 2, 3}, TheilSen.Z_80))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("two different x");
    }
}
