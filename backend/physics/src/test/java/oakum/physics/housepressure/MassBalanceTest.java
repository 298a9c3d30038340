package oakum.physics.housepressure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MassBalanceTest {
    @Test
    void finds_a_house_below_and_above_outdoors() {
        assertThat(MassBalance.depressurisationPa(p -> p - 4, 4)).isCloseTo(4, within(1e-12));
        assertThat(MassBalance.depressurisationPa(p -> p + 9, 9)).isCloseTo(-9, within(1e-12));
        assertThat(MassBalance.depressurisationPa(p -> p, 1)).isZero();
    }

    @Test
    void fails_loudly_where_no_pressure_balances_the_flows() {
        assertThatThrownBy(() -> MassBalance.depressurisationPa(p -> -0.2, 0.2))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no house pressure balances the flows");
    }

    @Test
    void fails_loudly_where_the_flows_do_not_close() {
        assertThatThrownBy(() -> MassBalance.depressurisationPa(p -> p < 4 ? -0.2 : 0.2, 0.2))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("does not close");
    }
}
