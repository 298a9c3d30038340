package oakum.physics.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudentTTest {
    @ParameterizedTest
    @CsvSource({"0.975, 1", "0.975, 8", "0.975, 30", "0.90, 5", "0.90, 2", "0.999, 3", "0.51, 12", "0.975, 500"})
    void quantiles_agree_with_a_general_purpose_library(double probability, int degrees) {
        double theirs = new TDistribution(degrees).inverseCumulativeProbability(probability);

        assertThat(StudentT.quantile(probability, degrees)).isCloseTo(theirs, within(1e-8 * theirs));
    }
}
