package oakum.physics.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RootsTest {
    @Test
    void finds_the_root_of_a_steep_and_of_a_flat_function() {
        assertThat(Roots.bracketed(x -> x * x - 2, 0, 2, 1e-14)).isCloseTo(Math.sqrt(2), within(1e-13));
        assertThat(Roots.bracketed(x -> Math.pow(x - 0.3, 9), -4, 7, 1e-6)).isCloseTo(0.3, within(1e-5));
        assertThat(Roots.bracketed(Math::cos, 1, 2, 1e-14)).isCloseTo(Math.PI / 2, within(1e-13));
    }

    @Test
    void refuses_a_bracket_without_a_change_of_sign() {
        assertThatThrownBy(() -> Roots.bracketed(x -> x * x + 1, -1, 1, 1e-9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no change of sign");
    }
}
