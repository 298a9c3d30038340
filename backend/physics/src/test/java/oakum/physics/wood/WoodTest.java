package oakum.physics.wood;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class WoodTest {
    private static final String INDEPENDENT = "computed by independent code from the printed equations";
    private static final double INCH = 0.0254;

    private static double equilibriumPercent(double temperatureC, double percent) {
        return 100 * WoodMoisture.equilibriumFraction(temperatureC, percent / 100);
    }

    @Test
    void the_printed_table_of_equilibrium_moisture() {
        double[] fahrenheit = {30, 50, 70, 90, 110};
        double[][] table = {
            {10, 2.6, 2.6, 2.5, 2.3, 2.2},
            {30, 6.3, 6.3, 6.2, 5.9, 5.6},
            {40, 7.9, 7.9, 7.7, 7.4, 7.0},
            {50, 9.5, 9.5, 9.2, 8.9, 8.4},
            {65, 12.4, 12.3, 12.0, 11.5, 11.0},
            {75, 14.9, 14.8, 14.4, 13.9, 13.2},
            {85, 18.5, 18.4, 17.9, 17.3, 16.6}
        };
        for (double[] line : table) {
            for (int i = 0; i < fahrenheit.length; i++) {
                row("WD-11", "USDA Wood Handbook table 4-2, as a public copy reproduces it, seen")
                        .near(equilibriumPercent((fahrenheit[i] - 32) / 1.8, line[0]), line[i + 1], abs(0.06));
            }
        }
    }

    @Test
    void equilibrium_and_back() {
        double[] humidity = {30, 50, 65, 80, 90, 95};
        double[] moisture = {6.188, 9.271, 11.996, 16.037, 20.531, 23.941};
        for (int i = 0; i < humidity.length; i++) {
            row("WD-1", INDEPENDENT).near(equilibriumPercent(20, humidity[i]), moisture[i], abs(0.005));
        }
        row("WD-2", INDEPENDENT)
                .near(equilibriumPercent(0, 50), 9.519, abs(0.005))
                .near(equilibriumPercent(0, 80), 16.533, abs(0.005))
                .near(equilibriumPercent(0, 90), 21.026, abs(0.005))
                .near(equilibriumPercent(-5, 85), 18.490, abs(0.005));
        double[] held = {6, 8, 12, 16, 20};
        double[] air = {.288, .418, .650, .799, .891};
        for (int i = 0; i < held.length; i++) {
            row("WD-3", INDEPENDENT).near(WoodMoisture.relativeHumidityFraction(20, held[i] / 100), air[i], abs(0.001));
        }
    }

    @Property
    void equilibrium_rises_with_humidity_and_its_inverse_comes_back(
            @ForAll @DoubleRange(min = -40, max = 130) double temperatureC,
            @ForAll @DoubleRange(min = 0, max = 1) double humidity) {
        double moisture = WoodMoisture.equilibriumFraction(temperatureC, humidity);

        assertThat(WoodMoisture.relativeHumidityFraction(temperatureC, moisture))
                .isCloseTo(humidity, within(1e-9));
        assertThat(WoodMoisture.equilibriumFraction(temperatureC, Math.max(humidity - 0.01, 0)))
                .isLessThanOrEqualTo(moisture);
    }

    @Test
    void wood_wetter_than_any_air_leaves_it_has_no_humidity() {
        assertThatThrownBy(() -> WoodMoisture.relativeHumidityFraction(20, 0.5)).hasMessageContaining("outside 0 to");
    }

    @Test
    void boards_move_by_their_coefficient() {
        row("WD-4", "a wood flooring guide, seen")
                .near(BoardMovement.widthChangeM(5 * INCH, .00129, .06, .09) / INCH, 0.019, abs(0.0005));
        row("WD-5", INDEPENDENT)
                .near(-1000 * moved(WoodSpecies.RED_OAK, BoardCut.FLAT_SAWN, .05715, .09, .06), 0.633, abs(0.002))
                .near(-1000 * moved(WoodSpecies.WHITE_OAK, BoardCut.QUARTER_SAWN, .05715, .09, .06), 0.309, abs(0.002));
    }

    private static double moved(WoodSpecies species, BoardCut cut, double widthM, double from, double to) {
        return BoardMovement.widthChangeM(widthM, Objects.requireNonNull(species.changePerPercent(cut)), from, to);
    }

    private static FloorMovement.Input floor(
            WoodSpecies species, BoardCut cut, double widthM, @Nullable Double fromHumidity, double toHumidity) {
        return new FloorMovement.Input(
                species,
                cut,
                null,
                widthM,
                0.019,
                4,
                20,
                new WoodCondition(fromHumidity, null),
                new WoodCondition(toHumidity, null),
                0,
                null);
    }

    @Test
    void a_floor_between_two_humidities() {
        FloorMovement.Result wide = FloorMovement.CALCULATION
                .calculate(floor(WoodSpecies.RED_OAK, BoardCut.FLAT_SAWN, 0.127, .60, .30))
                .output();
        row("WD-6", INDEPENDENT)
                .near(100 * wide.laidFraction(), 11.00, abs(0.01))
                .near(100 * wide.laterFraction(), 6.19, abs(0.01))
                .near(1000 * wide.gapM(), 2.25, abs(0.01));

        FloorMovement.Result strip = FloorMovement.CALCULATION
                .calculate(floor(WoodSpecies.RED_OAK, BoardCut.FLAT_SAWN, 0.05715, .50, .12))
                .output();
        row("WD-12", INDEPENDENT)
                .near(100 * strip.laidFraction(), 9.27, abs(0.01))
                .near(100 * strip.laterFraction(), 2.93, abs(0.01))
                .near(1000 * strip.gapM(), 1.34, abs(0.01));
        assertThat(strip.notices()).extracting(Notice::code).contains("movement-extrapolated", "shared-unevenly");
        assertThat(strip.sumM()).isCloseTo(70 * strip.gapM(), within(1e-3));
        assertThat(strip.band()).hasSize(9);
        assertThat(strip.band().get(8).gapM()).isCloseTo(strip.gapM(), within(1e-5));
    }

    @Test
    void a_floor_that_swells_is_said_to() {
        FloorMovement.Result result = FloorMovement.CALCULATION
                .calculate(floor(WoodSpecies.RED_SPRUCE, BoardCut.FLAT_SAWN, 0.127, .35, .65))
                .output();

        assertThat(result.gapM()).isNegative();
        assertThat(result.notices()).extracting(Notice::code).contains("floor-swells", "movement-estimated");
    }

    @Test
    void refuses_both_conditions_neither_and_a_species_without_a_coefficient() {
        assertThatThrownBy(() -> FloorMovement.CALCULATION.calculate(
                        floor(WoodSpecies.RED_OAK, BoardCut.FLAT_SAWN, 0.127, null, .3)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("neither is given");
        assertThatThrownBy(() -> FloorMovement.CALCULATION.calculate(
                        floor(WoodSpecies.HEART_PINE, BoardCut.QUARTER_SAWN, 0.127, .5, .3)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("heart pine");
        assertThatThrownBy(() -> new WoodCondition(.5, .1).moistureFraction("laid", 20))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not both");
    }

    @Test
    void framing_shrinks_by_its_measured_lines() {
        FramingShrinkage.Result joist = FramingShrinkage.CALCULATION
                .calculate(new FramingShrinkage.Input(FramingShrinkage.Side.WIDTH, 13.25 * INCH, .19, .10))
                .output();

        row("WD-7", "FPL-RP-489 lines, computed; a university course page prints 13.02 in. for the same ratio")
                .near(joist.sizeLaterM() / INCH, 12.99, abs(0.005));
    }

    @Test
    void shrinkage_comes_in_proportion_below_fibre_saturation() {
        double full = Objects.requireNonNull(WoodSpecies.DOUGLAS_FIR_COAST.shrinkage())
                .tangentialPercent();

        row("WD-8", INDEPENDENT)
                .near(WoodSpecies.Shrinkage.atMoisture(full, .12), 4.56, abs(0.01))
                .near(WoodSpecies.Shrinkage.atMoisture(full, .19), 2.79, abs(0.01));
        assertThat(WoodSpecies.Shrinkage.atMoisture(full, .35)).isZero();
    }

    @Test
    void cups() {
        row("WD-13", INDEPENDENT)
                .near(1000 * BoardMovement.cupFromFacesM(.127, .019, .00369, .02), 0.783, abs(0.005))
                .near(1000 * BoardMovement.cupFromRingsM(.127, .00369, .00158, .04, .08), 0.425, abs(0.005));
    }

    @Test
    void heat_of_wood() {
        double gravity = WoodHeat.gravity(.54, 12.3, .10);

        row("WD-9", "USDA Wood Handbook example, as a public copy reproduces it, seen")
                .near(gravity, 0.588, abs(0.0005))
                .near(WoodHeat.conductivityWPerMK(gravity, .10), 0.1567, abs(0.0002));
        row("WD-10", "USDA Wood Handbook example, as a public copy reproduces it, seen")
                .near(WoodHeat.heatCapacityJPerKgK(340 - 273.15, .12) / 1000, 1.91, abs(0.01));
    }

    @Test
    void estimated_coefficients_lie_near_the_listed_ones() {
        for (WoodSpecies species : WoodSpecies.values()) {
            WoodSpecies.Shrinkage shrinkage = species.shrinkage();
            Double listed = species.changePerPercent(BoardCut.FLAT_SAWN);
            if (shrinkage != null && listed != null && !species.isEstimated(BoardCut.FLAT_SAWN)) {
                assertThat(shrinkage.tangentialPercent() / 2850)
                        .as(species.label())
                        .isCloseTo(listed, within(0.2 * listed));
            }
        }
    }
}
