package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import org.junit.jupiter.api.Test;

class MaterialLayersTest {
    private static final double SEA_LEVEL_PA = 101_325;

    @Test
    void every_material_of_the_library_that_stores_can_be_a_layer() {
        List<Material> storing = MaterialLibrary.all().stream()
                .filter(m -> m.isSheet() || m.knows(MaterialProperty.SORPTION))
                .toList();
        assertThat(storing).hasSizeGreaterThan(20);
        for (Material material : storing) {
            WallLayer layer = MaterialLayers.of("layers[a]", material.label(), 0.02, material, 0.8, SEA_LEVEL_PA);
            Wall wall = new Wall(
                    List.of(
                            layer,
                            MaterialLayers.of(
                                    "layers[b]",
                                    "board",
                                    0.012,
                                    MaterialLibrary.require("b", "plywood"),
                                    0.8,
                                    SEA_LEVEL_PA)),
                    Face.film(8, 3e-8),
                    Face.film(17, 1e-7),
                    List.of(),
                    List.of());

            RunResult result =
                    HygrothermalRun.of(wall, new Steady(), RunPlan.hours(48)).run(HourSink.NONE, RunControl.NONE);

            assertThat(result.outcome()).as(material.id()).isEqualTo(RunResult.Outcome.FINISHED);
        }
    }

    @Test
    void water_resistance_and_conductivity_are_the_material_s() {
        Material plywood = MaterialLibrary.require("m", "plywood");
        LayerProperties properties = MaterialLayers.properties(0.02, plywood, SEA_LEVEL_PA);
        Cells cells = new Cells(1);
        cells.temperatureC[0] = 20;
        cells.coordinate[0] = properties.coordinate(0.8);

        properties.evaluate(cells, 0, 1);

        // 13.5 % of 500 kg/m³, and the vapour of the pores
        assertThat(cells.water[0]).isCloseTo(67.5, within(0.1));
        // 1.937e-10 at 20 °C (Schirmer, from memory; computed in the reference sheet)
        assertThat(cells.vapourResistivity[0] * 1.937e-10).isCloseTo(plywood.resistanceFactor(0.8), within(0.05));
        assertThat(1 / cells.heatResistivity[0]).isCloseTo(plywood.conductivityWPerMK(20, 67.5), within(1e-4));
    }

    @Test
    void liquid_flow_is_the_diffusivity_times_the_gradient_of_water() {
        Material brick = MaterialLibrary.require("m", "clay-brick");
        LayerProperties properties = MaterialLayers.properties(0.02, brick, SEA_LEVEL_PA);
        double humidity = 0.99;
        double step = 1e-5;

        double slope = (properties.liquidPotentialKgPerMS(humidity + step)
                        - properties.liquidPotentialKgPerMS(humidity - step))
                / (brick.sorption().waterKgPerM3(humidity + step)
                        - brick.sorption().waterKgPerM3(humidity - step));

        assertThat(slope).isCloseTo(brick.liquidDiffusivityM2PerS(humidity), within(0.01 * slope));
    }

    @Test
    void vapour_passes_pores_more_easily_where_the_air_is_thin() {
        Material wool = MaterialLibrary.require("m", "mineral-wool-batt");
        Cells cells = new Cells(1);
        cells.temperatureC[0] = 20;
        cells.coordinate[0] = 0.5;
        MaterialLayers.properties(0.02, wool, SEA_LEVEL_PA).evaluate(cells, 0, 1);
        double low = cells.vapourResistivity[0];
        MaterialLayers.properties(0.02, wool, SEA_LEVEL_PA / 2).evaluate(cells, 0, 1);

        assertThat(cells.vapourResistivity[0]).isCloseTo(low / 2, within(1e-6 * low));
    }

    @Test
    void a_material_that_lacks_what_a_layer_needs_is_refused_by_name() {
        Material fleece = Material.of(Canonical.read(
                MaterialInput.class,
                Map.of(
                        "id", "fleece",
                        "label", "Fleece",
                        "densityKgPerM3", "50",
                        "resistanceFactors[0].humidityFraction", "0.5",
                        "resistanceFactors[0].resistanceFactor", "2",
                        "source", "its data sheet",
                        "status", "SEEN")));

        assertThatThrownBy(() -> MaterialLayers.of("layers[fill].materialId", "fill", 0.1, fleece, 0.8, SEA_LEVEL_PA))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Fleece")
                .hasMessageContaining("layers[fill].materialId");
    }

    private static final class Steady implements Climate {
        @Override
        public void at(int hour, double fraction, ClimateState state) {
            state.outdoorTemperatureC = 0;
            state.outdoorEquivalentC = 0;
            state.outdoorVapourPa = 489;
            state.rainKgPerM2S = 0;
            state.indoorTemperatureC = 20;
            state.indoorVapourPa = 935;
            state.airflowM3PerM2S = 0;
            state.leakM3PerM2S = 0;
            state.cavityAirChangesPerHour = 0;
        }
    }
}
