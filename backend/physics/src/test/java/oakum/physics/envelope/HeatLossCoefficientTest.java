package oakum.physics.envelope;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import oakum.physics.calculation.Refused;
import org.junit.jupiter.api.Test;

class HeatLossCoefficientTest {
    private static final List<HeatLossCoefficient.Element> WALL =
            List.of(new HeatLossCoefficient.Element("wall", null, 120, 0.15, null));

    private static LinearBridge bridge(String id, double length, double psi, Dimensions dimensions) {
        return new LinearBridge(id, id, length, psi, dimensions, "typed");
    }

    private static HeatLossCoefficient.Output of(List<LinearBridge> lines, List<PointBridge> points) {
        return HeatLossCoefficient.CALCULATION
                .calculate(new HeatLossCoefficient.Input(Dimensions.EXTERNAL, WALL, lines, points))
                .output();
    }

    @Test
    void areas_lines_and_points_add_up() {
        HeatLossCoefficient.Output house = of(
                List.of(
                        bridge("edge", 48, 0.05, Dimensions.EXTERNAL),
                        bridge("corner", 40, -0.04, Dimensions.EXTERNAL)),
                List.of(new PointBridge("brackets", "brackets", 60, 0.002, "typed")));

        row("TB-1", "ISO 13789, computed by two independent programs")
                .near(house.lossWPerK(), 18.92, abs(0.01))
                .near(house.meanUValueWPerM2K(), 0.1577, abs(0.0002));
    }

    @Test
    void bridges_of_other_dimensions_than_the_areas_are_refused() {
        assertThatThrownBy(() -> of(List.of(bridge("corner", 40, 0.08, Dimensions.INTERNAL)), List.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("corner")
                .hasMessageContaining("linearBridges[0].dimensions")
                .hasMessageContaining("outside dimensions");
    }

    @Test
    void what_lies_to_the_ground_counts_by_its_share_of_the_temperature_difference() {
        HeatLossCoefficient.Output house = HeatLossCoefficient.CALCULATION
                .calculate(new HeatLossCoefficient.Input(
                        Dimensions.INTERNAL,
                        List.of(new HeatLossCoefficient.Element("slab", "Slab", 100, 0.2, 0.5)),
                        List.of(),
                        List.of()))
                .output();

        assertThat(house.lossWPerK()).isEqualTo(10);
        assertThat(house.notices()).extracting(n -> n.sentence()).anyMatch(s -> s.contains("unsafe side"));
    }
}
