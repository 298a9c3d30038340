package oakum.physics.trend;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oakum.physics.checkrow.CheckRow;
import oakum.physics.filtration.PowerFit;
import org.junit.jupiter.api.Test;

class LoadingLawTest {
    private static final double[] DAY = {0, 14, 30, 45, 60, 75, 90};
    private static final double[] DROP_PA = {30, 32.9, 35.1, 36.1, 40, 42.8, 47.5};
    private static final double[] FLOW_CFM = {1000, 1015, 1000, 975, 990, 985, 1005};

    private static double[] normalised() {
        double[] drop = new double[DAY.length];
        for (int i = 0; i < drop.length; i++) {
            drop[i] = PowerFit.atReference(DROP_PA[i], FLOW_CFM[i], 1000, 1.4);
        }
        return drop;
    }

    @Test
    void ninety_days_of_a_filling_filter() {
        double[] drop = normalised();
        double[] printed = {30.000, 32.221, 35.100, 37.403, 40.567, 43.715, 47.169};
        CheckRow row = row("R-FIL-10", "computed by own Python");
        for (int i = 0; i < drop.length; i++) {
            row.near(drop[i], printed[i], rel(1e-4));
        }

        LoadingLaw linear = LoadingLaw.of(LoadingLaw.Form.LINEAR, DAY, drop);
        LoadingLaw.Crossing straight = linear.reaches(75, 0.80).orElseThrow();
        LoadingLaw exponential = LoadingLaw.of(LoadingLaw.Form.EXPONENTIAL, DAY, drop);
        LoadingLaw.Crossing curved = exponential.reaches(75, 0.80).orElseThrow();

        row.near(linear.at(0), 29.5256, rel(1e-4))
                .near(linear.line().slope(), 0.189479, rel(1e-4))
                .near(straight.day(), 240.0, abs(0.5))
                .near(straight.earliest(), 231.3, abs(0.5))
                .near(straight.latest(), 249.6, abs(0.5))
                .near(exponential.at(0), 30.0339, rel(1e-4))
                .near(exponential.line().slope(), 0.005006, rel(1e-4))
                .near(curved.day(), 182.8, abs(0.5))
                .near(curved.earliest(), 180.9, abs(0.5))
                .near(curved.latest(), 184.8, abs(0.5))
                .near(linear.reaches(60, 0.80).orElseThrow().day(), 160.8, abs(0.5))
                .near(exponential.reaches(60, 0.80).orElseThrow().day(), 138.2, abs(0.5))
                .exactly(LoadingLaw.better(DAY, drop).form(), LoadingLaw.Form.EXPONENTIAL)
                .exactly(curved.guess(), true);
    }

    @Test
    void a_slope_lost_in_scatter_gives_no_latest_day() {
        double[] day = {0, 1, 2, 3};
        double[] load = {1.00, 1.20, 0.95, 1.10};

        LoadingLaw.Crossing crossing = LoadingLaw.of(LoadingLaw.Form.LINEAR, day, load)
                .reaches(2, 0.80)
                .orElseThrow();

        assertThat(crossing.latest()).isInfinite();
        assertThat(crossing.earliest()).isBetween(1.5, crossing.day());
        LoadingLaw law = LoadingLaw.of(LoadingLaw.Form.LINEAR, day, load);
        double band = 1.885618 * law.line().standardErrorAt(crossing.earliest());
        assertThat(law.at(crossing.earliest()) + band).isCloseTo(2, within(1e-5));
    }

    @Test
    void a_filter_that_does_not_fill_never_reaches_the_limit() {
        assertThat(LoadingLaw.better(DAY, new double[] {1.2, 1.2, 1.1, 1.1, 1.0, 1.0, 1.0})
                        .reaches(2, 0.80))
                .isEmpty();
    }
}
