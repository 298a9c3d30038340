package oakum.portal.houserecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import oakum.physics.calculation.WorkedExample;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.PortalTest;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.people.AsPortal;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** House pressure filled from the record, before and after the house was tested. */
@PortalTest
class HousePressureBindingsTest {
    @Autowired
    Houses houses;

    @Autowired
    HouseRecord record;

    @Autowired
    Proofs proofs;

    @Autowired
    HouseCalculations calculations;

    @Test
    void the_target_counts_until_a_tightness_proof_gives_flow_and_exponent_with_their_intervals() {
        String house = HouseFixtures.house(houses);
        AsPortal.run(() -> record.save(house, PartKind.AIR, HouseFixtures.air(0.18878), "hood"));
        FilledCalculation before = AsPortal.call(() -> calculations.fill(house, "house-pressure", null));
        assertThat(before.relied())
                .extracting("input", "path")
                .contains(
                        tuple("q50M3PerS", "air.tightness.q50M3PerS"),
                        tuple("devices[rangeHood].airflowM3PerS", "air.exhaust[rangeHood].ratedFlowM3PerS"));
        assertThat(before.inputs()).doesNotContainKey("exponentUncertainty");

        AsPortal.run(() -> proofs.make(house, "tightness", "Tightness test", "tightness-test", tested(), "tested"));
        FilledCalculation after = AsPortal.call(() -> calculations.fill(house, "house-pressure", null));
        Proof proof = AsPortal.call(() -> record.snapshot(house)).proofs().get("tightness");
        assertThat(after.inputs())
                .containsEntry("exponent", proof.content().outputs().get("depressurised.exponent"))
                .containsEntry("exponentUncertainty", proof.content().outputs().get("depressurised.exponentInterval"))
                .containsEntry(
                        "q50UncertaintyFraction",
                        proof.content().outputs().get("depressurised.airflow50UncertaintyFraction"));
    }

    /** A published example of a test that lowered the house, every value typed. */
    private static List<Binding> tested() {
        return Catalogue.find("tightness-test").orElseThrow().workedExamples().stream()
                .map(WorkedExample::inputs)
                .filter(inputs ->
                        inputs.keySet().stream().anyMatch(name -> name.startsWith("depressurisation.readings")))
                .findFirst()
                .orElseThrow()
                .entrySet()
                .stream()
                .map(input -> Binding.typed(input.getKey(), input.getValue(), "worked example"))
                .toList();
    }
}
