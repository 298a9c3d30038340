package oakum.physics.material;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MaterialTest {
    private static final String COMPUTED = "computed by an independent program";
    private static final double PERM = 5.721e-11;

    private static Material library(String id) {
        return MaterialLibrary.require("material", id);
    }

    private static Map<String, String> board() {
        Map<String, String> board = new LinkedHashMap<>();
        board.put("id", "own-board");
        board.put("label", "Own board");
        board.put("densityKgPerM3", "600");
        board.put("resistanceFactors[0].humidityFraction", "0.25");
        board.put("resistanceFactors[0].resistanceFactor", "100");
        board.put("resistanceFactors[1].humidityFraction", "0.75");
        board.put("resistanceFactors[1].resistanceFactor", "40");
        board.put("sorption[0].humidityFraction", "0.5");
        board.put("sorption[0].waterFraction", "0.07");
        board.put("sorption[1].humidityFraction", "0.8");
        board.put("sorption[1].waterFraction", "0.12");
        board.put("saturationWaterKgPerM3", "400");
        board.put("source", "data sheet of March 2026");
        board.put("status", "SEEN");
        return board;
    }

    private static Material material(Map<String, String> leaves) {
        return Material.of(Canonical.read(MaterialInput.class, leaves));
    }

    @Test
    void a_variable_membrane_opens_with_the_mean_humidity_of_both_faces() {
        Material membrane = library("variable-membrane");

        row("MT-1", COMPUTED)
                .near(membrane.diffusionThicknessM(0, 0.10), 4.0, rel(0.005))
                .near(membrane.diffusionThicknessM(0, 0.35), 3.031, rel(0.005))
                .near(membrane.diffusionThicknessM(0, 0.60), 0.861, rel(0.005))
                .near(membrane.diffusionThicknessM(0, 0.80), 0.208, rel(0.005))
                .near(membrane.diffusionThicknessM(0, 0.98), 0.1, rel(0.005));
    }

    @Test
    void plywood_opens_as_it_gets_wet() {
        Material plywood = library("plywood");

        row("MT-2", COMPUTED)
                .near(plywood.resistanceFactor(0.50), 118.3, rel(0.005))
                .near(plywood.resistanceFactor(0.85), 41.8, rel(0.005))
                .near(plywood.permeanceKgPerSM2Pa(0.012, 0.25) / PERM, 1.46, rel(0.005))
                .near(plywood.permeanceKgPerSM2Pa(0.012, 0.75) / PERM, 4.16, rel(0.005))
                .near(plywood.permeanceKgPerSM2Pa(0.012, 0.95) / PERM, 11.65, rel(0.005));
    }

    @Test
    void conductivity_is_converted_to_temperature_and_water() {
        Material wool = library("mineral-wool-batt");
        double warm = wool.conductivityWPerMK(10, 0);

        row("MT-3", "ISO 10456, " + COMPUTED)
                .near(wool.conductivityWPerMK(-10, 0), 0.03167, rel(0.001))
                .near(wool.conductivityWPerMK(10, 20) / warm, 1.0833, rel(0.001));
    }

    @Test
    void spruce_holds_water_as_its_isotherm_says() {
        Sorption spruce = library("spruce").sorption();

        row("MT-4", COMPUTED)
                .near(spruce.waterKgPerM3(0.725), 60.2, rel(0.002))
                .near(spruce.waterKgPerM3(0.95), 102.8, rel(0.002))
                .near(spruce.waterKgPerM3(1), 470, rel(0.002));
    }

    @Test
    void mineral_materials_hold_water_as_two_contents_say() {
        Sorption sorption = new SorptionFormula(600, 60);

        row("TR-10", "Künzel 1995, form from memory; " + COMPUTED)
                .near(SorptionFormula.shape(600, 60), 1.02857, abs(1e-5))
                .near(sorption.waterKgPerM3(0.5), 16.22, abs(0.1))
                .near(sorption.waterKgPerM3(0.8), 60.0, abs(0.1))
                .near(sorption.waterKgPerM3(0.9), 120.0, abs(0.1))
                .near(sorption.waterKgPerM3(0.95), 207.3, abs(0.1))
                .near(sorption.waterKgPerM3(0.99), 440.0, abs(0.1));
    }

    @Test
    void liquid_moves_as_the_capillary_uptake_says() {
        row("TR-11", "Künzel 1995, form from memory; " + COMPUTED)
                .near(Material.liquidDiffusivityM2PerS(0.05, 200, 100), 7.510e-9, rel(0.005))
                .near(Material.liquidDiffusivityM2PerS(0.05, 200, 200), 2.375e-7, rel(0.005));
    }

    @Test
    void wood_conducts_better_when_wet_as_the_wood_equation_says() {
        // G(0.1941 + 0.004064 M) + 0.01864 for specific gravity 0.43: 0.1184 at 9.27 %, 0.1301 at 16 %
        Material spruce = library("spruce");
        double rise = spruce.conductivityWPerMK(10, 0.16 * 430) - spruce.conductivityWPerMK(10, 0.0927 * 430);

        assertThat(rise).isCloseTo(0.43 * 0.004064 * (16 - 9.27), within(1e-9));
        assertThat(spruce.conductivityWPerMK(10, 0.0927 * 430)).isCloseTo(0.12, within(1e-12));
    }

    @Test
    void capillary_transport_is_not_counted_twice() {
        Map<String, String> leaves = board();
        leaves.put("waterUptakeKgPerM2SqrtS", "0.003");
        Material falling = material(leaves);
        leaves.put("liquidRule", "WHOLE_RANGE");
        Material dryCup = material(leaves);
        leaves.put("liquidRule", "NONE");
        Material none = material(leaves);

        assertThat(falling.liquidDiffusivityM2PerS(0.94)).isZero();
        assertThat(falling.liquidDiffusivityM2PerS(0.96)).isPositive();
        assertThat(falling.resistanceFactor(0.75)).isCloseTo(40, within(1e-9));
        assertThat(dryCup.liquidDiffusivityM2PerS(0.5)).isPositive();
        assertThat(dryCup.resistanceFactor(0.75)).isEqualTo(100);
        assertThat(none.liquidDiffusivityM2PerS(1)).isZero();
    }

    @Test
    void the_library_says_where_each_value_comes_from() {
        assertThat(MaterialLibrary.all()).hasSizeGreaterThan(25).allSatisfy(material -> {
            for (MaterialProperty property : MaterialProperty.values()) {
                assertThat(material.source(property).citation()).isNotBlank();
            }
        });
        assertThat(library("concrete").source(MaterialProperty.SORPTION).status())
                .isEqualTo(oakum.physics.calculation.Source.Status.SEEN);
        assertThat(library("osb").source(MaterialProperty.SORPTION).status())
                .isEqualTo(oakum.physics.calculation.Source.Status.FROM_MEMORY);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "sorption[1].waterFraction | 0.06 | sorption table falls",
                "sorption[1].humidityFraction | 0.5 | must rise in humidity",
                "resistanceFactors[1].resistanceFactor | 110 | rises with humidity",
                "resistanceFactors[1].humidityFraction | 0.2 | must rise in humidity",
                "saturationWaterKgPerM3 | 60 | below the last point",
                "densityKgPerM3 | 0 | outside 1 to 12000",
                "conductivityWPerMK | NaN | outside 0.001 to 500",
                "waterAt80PercentKgPerM3 | 20 | only one can hold"
            })
    void refuses_what_cannot_be_naming_material_and_value(String pointer, String value, String because) {
        Map<String, String> leaves = board();
        leaves.put(pointer, value);

        assertThatThrownBy(() -> material(leaves))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Own board")
                .hasMessageContaining(because);
    }

    @Test
    void refuses_curves_that_lack_what_they_rest_on() {
        Map<String, String> leaves = board();
        leaves.remove("saturationWaterKgPerM3");
        leaves.remove("densityKgPerM3");
        leaves.put("waterUptakeKgPerM2SqrtS", "0.01");
        leaves.put("moistureSupplement", "BY_MASS");

        assertThatThrownBy(() -> material(leaves))
                .hasMessageContaining("densityKgPerM3 is missing")
                .hasMessageContaining("saturationWaterKgPerM3 is missing")
                .hasMessageContaining("moistureCoefficient is missing");
    }

    @Test
    void a_calculation_that_needs_more_than_the_material_knows_is_told_so() {
        assertThatThrownBy(() -> library("glass-wool")
                        .require("layers[2].material", MaterialProperty.CONDUCTIVITY, MaterialProperty.SORPTION))
                .isInstanceOf(Refused.class)
                .hasMessage("Material \"Glass wool\" (layers[2].material) has no sorption.");
        assertThatThrownBy(() -> MaterialLibrary.require("layers[0].material", "unobtainium"))
                .hasMessageContaining("layers[0].material");
    }

    @Property
    void isotherms_never_fall_and_invert(
            @ForAll @DoubleRange(max = 1) double humidity, @ForAll @DoubleRange(max = 1) double other) {
        for (Material material : MaterialLibrary.all()) {
            if (!material.knows(MaterialProperty.SORPTION)) {
                continue;
            }
            Sorption sorption = material.sorption();
            double drier = Math.min(humidity, other);
            double wetter = Math.max(humidity, other);
            double water = sorption.waterKgPerM3(humidity);

            assertThat(sorption.waterKgPerM3(wetter)).isGreaterThanOrEqualTo(sorption.waterKgPerM3(drier));
            assertThat(sorption.waterKgPerM3(sorption.humidityFraction(water)))
                    .as(material.label())
                    .isCloseTo(water, within(1e-9 * (1 + water)));
            assertThat(sorption.slopeKgPerM3(humidity)).isNotNegative();
        }
    }

    @Property
    void the_slope_of_the_formula_is_that_of_its_curve(@ForAll @DoubleRange(min = 0.01, max = 0.99) double humidity) {
        Sorption sorption = new SorptionFormula(600, 60);
        double h = 1e-6;
        double slope = (sorption.waterKgPerM3(humidity + h) - sorption.waterKgPerM3(humidity - h)) / (2 * h);

        assertThat(sorption.slopeKgPerM3(humidity)).isCloseTo(slope, within(1e-5 * slope));
        assertThat(sorption.humidityFraction(sorption.waterKgPerM3(humidity))).isCloseTo(humidity, within(1e-12));
    }

    @Property
    void vapour_resistance_never_rises_with_humidity(
            @ForAll @DoubleRange(max = 1) double humidity, @ForAll @DoubleRange(max = 1) double other) {
        for (Material material : MaterialLibrary.all()) {
            if (material.knows(MaterialProperty.VAPOUR_RESISTANCE)) {
                assertThat(material.diffusionThicknessM(0.1, Math.max(humidity, other)))
                        .isLessThanOrEqualTo(material.diffusionThicknessM(0.1, Math.min(humidity, other)) + 1e-12);
            }
        }
    }
}
