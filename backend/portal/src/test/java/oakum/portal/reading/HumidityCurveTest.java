package oakum.portal.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

class HumidityCurveTest {
    private final HumidityCurve curve = new HumidityCurve(Map.of(0.0, 0.42, -10.0, 0.35, -17.0, 0.30));

    @Test
    void a_point_of_the_record_is_met_exactly() {
        assertThat(curve.at(-10)).isEqualTo(0.35);
    }

    @Test
    void between_two_points_it_is_straight() {
        assertThat(curve.at(-5)).isCloseTo(0.385, within(1e-12));
    }

    @Test
    void beyond_the_outermost_points_it_says_nothing() {
        assertThat(curve.at(-17.1)).isNull();
        assertThat(curve.at(25)).isNull();
    }
}
