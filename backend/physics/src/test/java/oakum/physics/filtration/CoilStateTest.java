package oakum.physics.filtration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.moistair.MoistAir;
import org.junit.jupiter.api.Test;

class CoilStateTest {
    @Property(tries = 300)
    void a_coil_never_adds_moisture_and_takes_out_exactly_its_heat(
            @ForAll @DoubleRange(min = 15, max = 35) double temperature,
            @ForAll @DoubleRange(min = 0.1, max = 1) double humidity,
            @ForAll @DoubleRange(min = 0, max = 6000) double coolingW,
            @ForAll @DoubleRange(min = 0, max = 0.3) double bypass,
            @ForAll @DoubleRange(min = 0, max = 3000) double altitude) {
        CoilState.Output out;
        try {
            out = CoilState.CALCULATION
                    .calculate(new CoilState.Input(0.35, temperature, humidity, coolingW, bypass, altitude))
                    .output();
        } catch (Refused tooMuchHeat) {
            Assume.that(false);
            return;
        }

        double heat = out.dryAirKgPerS() * (out.enteringJPerKg() - out.leavingJPerKg());
        assertThat(heat).isCloseTo(coolingW, within(1e-6 * Math.max(1, coolingW)));
        assertThat(out.condensateKgPerH()).isGreaterThanOrEqualTo(0);
        assertThat(out.leavingC()).isLessThanOrEqualTo(temperature + 1e-9);
        // mixing along a straight line keeps the heat to the curvature of h in T and W, which is small
        assertThat(MoistAir.enthalpyJPerKg(out.leavingC(), out.leavingKgPerKg()))
                .isCloseTo(out.leavingJPerKg(), within(200.0));
    }

    @Test
    void an_iced_coil_is_said_and_an_impossible_one_refused() {
        assertThat(CoilState.CALCULATION
                        .calculate(new CoilState.Input(0.15, 22, 0.5, 7000, 0.1, 0))
                        .notices())
                .extracting(Notice::code)
                .contains("coil-ices");
        assertThatThrownBy(() -> CoilState.CALCULATION.calculate(new CoilState.Input(0.05, 22, 0.5, 50_000, 0.1, 0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("less heat or more airflow");
    }
}
