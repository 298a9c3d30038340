package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Verdict;
import org.junit.jupiter.api.Test;

class HumidityCeilingTest {
    private static WallMoistureInput wall(Map<String, String> in) {
        in.put("years", "2");
        return Canonical.read(WallMoistureInput.class, in);
    }

    @Test
    void at_the_ceiling_the_wall_passes_and_a_little_above_it_does_not() {
        Map<String, String> in = WallMoistureTest.doubleStud("0.4");
        HumidityCeilingResult ceiling = HumidityCeiling.compute(wall(in), RunControl.NONE);

        assertThat(ceiling.atMinusTenFraction()).isNotNull();
        assertThat(verdictAt(ceiling, 1)).isEqualTo(Verdict.PASSES);
        assertThat(verdictAt(ceiling, 1.15)).isNotEqualTo(Verdict.PASSES);
    }

    private static Verdict verdictAt(HumidityCeilingResult ceiling, double factor) {
        Map<String, String> in = WallMoistureTest.doubleStud("0.4");
        in.remove("indoorHumidityFraction");
        in.put("indoor", "WINTER_CURVE");
        for (int i = 0; i < ceiling.curve().size(); i++) {
            HumidityCeilingResult.Point point = ceiling.curve().get(i);
            in.put("indoorCurve[" + i + "].outdoorC", Canonical.text(point.outdoorC()));
            in.put(
                    "indoorCurve[" + i + "].humidityFraction",
                    Canonical.text(Math.min(0.95, factor * point.ceilingFraction())));
        }
        return WallMoisture.CALCULATION.calculate(wall(in)).output().verdict();
    }

    /** Row DP-2 turned round: at −10 °C a plane of −4.533 °C stands 0.8/2.24 of 40 %. */
    @Test
    void the_quick_bound_is_the_dew_point_test_turned_round() {
        Map<String, String> in = WallMoistureTest.doubleStud("0.4");
        in.keySet().removeIf(k -> k.startsWith("layers["));
        typed(in, "lining", 0.05 / 1, 1);
        typed(in, "fill", 3.5 * 0.04, 0.04);
        typed(in, "board", 0.69 * 0.13, 0.13);

        HumidityCeilingResult ceiling = HumidityCeiling.compute(wall(in), (done, hours) -> false);
        HumidityCeilingResult.Point cold = ceiling.curve().get(4);

        assertThat(cold.planeC()).isCloseTo(-4.533, within(0.01));
        assertThat(cold.quickFraction()).isCloseTo(0.8 * 0.4 / 2.24, within(0.001));
        assertThat(ceiling.notices()).anyMatch(n -> n.code().equals("stopped"));
    }

    private static void typed(Map<String, String> in, String id, double thicknessM, double conductivity) {
        in.put("layers[" + id + "].id", id);
        in.put("layers[" + id + "].materialId", "plywood");
        in.put("layers[" + id + "].thicknessM", Canonical.text(thicknessM));
        in.put("layers[" + id + "].conductivityWPerMK", Canonical.text(conductivity));
    }
}
