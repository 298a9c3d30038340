package oakum.portal.houserecord;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oakum.portal.houserecord.standing.Binding;

/** Where the calculations of the Air part get their inputs. */
final class AirBindings {
    static final String HOUSE_PRESSURE = "house-pressure";

    private static final String TIGHTNESS = "tightness-test";

    private AirBindings() {}

    /** Bindings of house pressure and make-up air; what the record does not hold is typed. */
    static List<Binding> housePressure(Snapshot snapshot) {
        List<Binding> bindings = new ArrayList<>(envelope(snapshot));
        bindings.addAll(List.of(
                Binding.of("altitudeM", "house.altitudeM"),
                Binding.of("indoorTemperatureC", "heat.indoorC"),
                Binding.of("outdoorTemperatureC", "house.designOutdoorC"),
                Binding.of("limit.workingPa", "air.limits.housePressurePa"),
                Binding.of("limit.failedPa", "air.limits.failedMakeUpPressurePa"),
                Binding.of("limit.rule", "air.limits.source"),
                Binding.of(
                        "devices",
                        "air.exhaust",
                        Map.of(
                                "airflowM3PerS", "ratedFlowM3PerS",
                                "makeUp", "makeUpId",
                                "shutOffPa", "shutOffPressurePa")),
                Binding.of("ventilator.supplyM3PerS", "air.ventilation.supplyM3PerS"),
                Binding.of("ventilator.exhaustM3PerS", "air.ventilation.exhaustM3PerS"),
                Binding.of("openings", "air.passiveOpenings"),
                Binding.of(
                        "makeUpUnits",
                        "air.makeUp",
                        Map.of(
                                "airflowM3PerS", "flowM3PerS",
                                "supplyTemperatureC", "supplyC",
                                "heaterRatingW", "heaterRatedW",
                                "circuitA", "circuitRatedA",
                                "outletAreaM2", "outletGrossAreaM2",
                                "openSignalWithinS", "proofTimeS"))));
        return List.copyOf(bindings);
    }

    /**
     * The envelope as the latest tightness proof measured it, with both its intervals; as the Air part has it until there
     * is one. Exhaust pulls the house below outdoors, so the direction that did so counts where it was run.
     */
    private static List<Binding> envelope(Snapshot snapshot) {
        return tested(snapshot)
                .map(direction -> List.of(
                        Binding.of("q50M3PerS", direction + ".airflow50M3PerS"),
                        Binding.of("exponent", direction + ".exponent"),
                        Binding.of("q50UncertaintyFraction", direction + ".airflow50UncertaintyFraction"),
                        Binding.of("exponentUncertainty", direction + ".exponentInterval")))
                .orElse(List.of(
                        Binding.of("q50M3PerS", "air.tightness.q50M3PerS"),
                        Binding.of("exponent", "air.tightness.exponent")));
    }

    /** Path of the direction of the latest tightness proof. */
    private static Optional<String> tested(Snapshot snapshot) {
        return snapshot.proofs().values().stream()
                .filter(proof -> TIGHTNESS.equals(proof.content().calculation()))
                .max(Comparator.comparing(Proof::madeAt))
                .map(proof -> "results." + proof.key()
                        + (proof.content().outputs().containsKey("depressurised.exponent")
                                ? ".depressurised"
                                : ".pressurised"));
    }
}
