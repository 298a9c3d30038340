package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.mould.BelowFreezingMould;
import oakum.physics.mould.MouldSurface;
import org.junit.jupiter.api.Test;

class PlaneRisksTest {
    private static final PlaneRisks.Surface WOOD =
            new PlaneRisks.Surface(MouldSurface.SENSITIVE, 0.1, BelowFreezingMould.DECLINES);

    private static PlaneRisks after(double indoorHumidity) {
        LayerProperties board =
                new TabulatedProperties.Description(h -> 80 * h, h -> 20 / 2e-10, h -> 0, h -> 0.12).overHumidity();
        Wall wall = new Wall(
                List.of(new SolidLayer("board", 0.02, board, 500, 1600, indoorHumidity)),
                Face.film(8, 2.5e-8),
                Face.closed(),
                List.of(new Plane("far face", 0, 0.02)),
                List.of());
        PlaneRisks risks = new PlaneRisks(List.of(WOOD));
        HygrothermalRun.of(
                        wall,
                        TestWalls.steady(20, indoorHumidity * Iso13788Saturation.pressurePa(20), 0, 300),
                        RunPlan.hours(24 * 120).startingAt(20))
                .run(risks, RunControl.NONE);
        return risks;
    }

    @Test
    void a_damp_plane_grows_mould_and_a_dry_one_none() {
        PlaneRisks damp = after(0.97);
        assertThat(damp.mould(0).greatest()).isGreaterThan(1);
        assertThat(damp.decay(0).activation()).isPositive();
        assertThat(after(0.5).mould(0).greatest()).isZero();
    }
}
