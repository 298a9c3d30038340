package oakum.physics.filtration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Refused;
import org.junit.jupiter.api.Test;

class RoomParticlesTest {
    @Property(tries = 200)
    void the_transient_ends_at_the_steady_state_and_gains_match_losses_there(
            @ForAll @DoubleRange(min = 0, max = 500) double outdoor,
            @ForAll @DoubleRange(min = 0, max = 2) double infiltration,
            @ForAll @DoubleRange(min = 0.05, max = 2) double deposition,
            @ForAll @DoubleRange(min = 0, max = 1) double recirculated,
            @ForAll @DoubleRange(min = 0, max = 5000) double start) {
        RoomParticles room =
                new RoomParticles(outdoor, 400, infiltration, 0.8, 0.35, 0.5, deposition, recirculated, 0.6, 3000);
        double steady = room.steadyUgPerM3();

        double gainUgPerH = 400 * (0.8 * infiltration + 0.5 * 0.35) * outdoor + 3000;
        double lossUgPerH = 400 * (infiltration + 0.35 + deposition) * steady + 0.6 * recirculated * 3600 * steady;
        assertThat(lossUgPerH).isCloseTo(gainUgPerH, within(1e-9 * Math.max(1, gainUgPerH)));
        assertThat(room.afterUgPerM3(start, 0)).isCloseTo(start, within(1e-9 * Math.max(1, start + steady)));
        assertThat(room.afterUgPerM3(start, 200)).isCloseTo(steady, within(1e-6 * Math.max(1, steady)));
    }

    @Test
    void a_house_that_loses_no_particles_is_refused() {
        assertThatThrownBy(() -> ParticleBalance.CALCULATION.calculate(
                        new ParticleBalance.Input(10, 400, 0, 1, 0, 0, 0, 0, 0.5, 0, null, null, null, null, null)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("never settle");
    }
}
