package oakum.physics.duct;

import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoundDuctTest {
    private static final double DENSITY = 1.204;
    private static final double VISCOSITY = DENSITY * 1.5105e-5;
    private static final double CFM = 0.3048 * 0.3048 * 0.3048 / 60;
    private static final double INCH = 0.0254;

    @ParameterizedTest
    @CsvSource({
        "R-DUC-01, 100, 6, 2.5872, 0.67930",
        "R-DUC-02, 200, 8, 2.9106, 0.58730",
        "R-DUC-03, 400, 10, 3.7256, 0.69865",
        "R-DUC-04, 800, 12, 5.1744, 1.02164",
        "R-DUC-05, 1200, 14, 5.7025, 1.01314",
        "R-DUC-06, 60, 5, 2.2354, 0.65671"
    })
    void loses_what_the_colebrook_equation_says_for_spiral_duct(
            String id, double cfm, double inches, double velocityMPerS, double dropPaPerM) {
        RoundDuct metre = new RoundDuct(inches * INCH, 1, DuctSurface.GALVANISED.roughnessM(), 0);

        row(id, "ASHRAE Fundamentals ch. 21 formula (from memory), computed independently")
                .near(metre.velocityMPerS(cfm * CFM), velocityMPerS, rel(5e-4))
                .near(metre.dropPa(cfm * CFM, DENSITY, VISCOSITY), dropPaPerM, rel(5e-4));
    }

    @Test
    void friction_factor_agrees_with_independent_solutions() {
        row("R-DUC-07", "Colebrook equation, computed independently")
                .near(RoundDuct.frictionFactor(1e5, 1e-4), 0.0185139, rel(1e-5));
        row("R-DUC-08", "Colebrook equation, computed independently")
                .near(RoundDuct.frictionFactor(5e4, 1e-3), 0.0240208, rel(1e-5));
        assertThat(RoundDuct.frictionFactor(1000, 1e-3)).as("laminar").isEqualTo(0.064);
    }

    @Test
    void friction_factor_satisfies_the_colebrook_equation_everywhere() {
        for (double reynolds = 2301; reynolds < 1e9; reynolds *= 1.7) {
            for (double roughness : new double[] {0, 1e-6, 1e-4, 1e-3, 0.01, 0.1, 0.5}) {
                double x = 1 / Math.sqrt(RoundDuct.frictionFactor(reynolds, roughness));

                assertThat(x + 2 * Math.log10(roughness / 3.7 + 2.51 * x / reynolds))
                        .as("Re %s, ε/D %s", reynolds, roughness)
                        .isCloseTo(0, within(1e-12));
            }
        }
    }

    @Test
    void ten_metres_of_spiral_duct() {
        RoundDuct duct = new RoundDuct(0.25, 10, 0.09e-3, 0);

        row("R-DUC-09", "computed independently").near(duct.dropPa(0.2, DENSITY, VISCOSITY), 8.3924, rel(5e-4));
    }

    @ParameterizedTest
    @CsvSource({"0.01", "1", "40", "5000"})
    void flow_from_pressure_is_pressure_from_flow_turned_round(double dropPa) {
        RoundDuct duct = new RoundDuct(0.15, 6, 0.9e-3, 1.5);

        double flow = duct.airflowM3PerS(dropPa, DENSITY, VISCOSITY);

        assertThat(duct.dropPa(flow, DENSITY, VISCOSITY)).isCloseTo(dropPa, within(1e-9 * dropPa));
    }

    @Test
    void refuses_what_is_no_duct() {
        assertThatThrownBy(() -> new RoundDuct(0, 1, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("diameter 0.0 m");
    }
}
