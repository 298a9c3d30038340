package oakum.physics.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class LineFitTest {
    private static final double[] X = {1, 2.5, 3, 4.2, 7};
    private static final double[] Y = {2.1, 4.7, 6.4, 8.1, 14.4};

    @Test
    void ordinary_fit_agrees_with_a_general_purpose_library() {
        SimpleRegression theirs = new SimpleRegression();
        for (int i = 0; i < X.length; i++) {
            theirs.addData(X[i], Y[i]);
        }
        LineFit ours = LineFit.ordinary(X, Y);

        assertThat(ours.slope()).isCloseTo(theirs.getSlope(), within(1e-12));
        assertThat(ours.intercept()).isCloseTo(theirs.getIntercept(), within(1e-12));
        assertThat(ours.correlation()).isCloseTo(theirs.getR(), within(1e-12));
        assertThat(ours.standardErrorAt(0)).isCloseTo(theirs.getInterceptStdErr(), within(1e-12));
    }

    @Test
    void only_the_ratio_of_weights_counts() {
        LineFit small = LineFit.weighted(X, Y, new double[] {1, 2, 3, 4, 5});
        LineFit large = LineFit.weighted(X, Y, new double[] {100, 200, 300, 400, 500});

        assertThat(large.slope()).isCloseTo(small.slope(), within(1e-12));
        assertThat(large.standardErrorAt(2)).isCloseTo(small.standardErrorAt(2), within(1e-12));
    }

    @Test
    void a_point_of_no_weight_does_not_pull_the_line() {
        LineFit without = LineFit.ordinary(new double[] {1, 2, 3}, new double[] {1, 2.2, 2.9});
        LineFit with =
                LineFit.weighted(new double[] {1, 2, 3, 9}, new double[] {1, 2.2, 2.9, -50}, new double[] {1, 1, 1, 0});

        assertThat(with.slope()).isCloseTo(without.slope(), within(1e-12));
        assertThatThrownBy(() -> LineFit.weighted(X, Y, new double[5])).hasMessageContaining("sum to 0");
    }
}
