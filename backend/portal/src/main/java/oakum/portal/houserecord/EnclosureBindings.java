package oakum.portal.houserecord;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import oakum.portal.houserecord.EnclosurePart.Assembly;
import oakum.portal.houserecord.EnclosurePart.Fastener;
import oakum.portal.houserecord.standing.Binding;
import org.jspecify.annotations.Nullable;

/** Where the enclosure's calculations get their inputs: one method a calculation, one line an input. */
final class EnclosureBindings {
    static final String CONTROL_LAYERS = "control-layers";
    static final String FINDINGS = "assembly-findings";
    static final String RESISTANCE = "assembly-resistance";
    static final String HEAT_LOSS = "heat-loss-coefficient";
    static final String U_VALUE = "uValueWPerM2K";

    /** Calculations about one assembly. */
    static final List<String> PER_ASSEMBLY = List.of(FINDINGS, RESISTANCE);

    /** Calculations about the whole house. */
    static final List<String> PER_HOUSE = List.of(CONTROL_LAYERS, HEAT_LOSS);

    private EnclosureBindings() {}

    /**
     * Bindings of a calculation about the house.
     *
     * @param uValue an assembly's U-value as it is now, for one that no proof holds
     */
    static List<Binding> ofHouse(String calculation, Snapshot snapshot, Function<String, Optional<String>> uValue) {
        return switch (calculation) {
            case CONTROL_LAYERS -> controlLayers();
            case HEAT_LOSS -> heatLoss(snapshot, uValue);
            default -> throw new IllegalArgumentException(calculation);
        };
    }

    /** Bindings of a calculation about one assembly. */
    static List<Binding> ofAssembly(String calculation, Snapshot snapshot, Assembly assembly) {
        return switch (calculation) {
            case FINDINGS -> findings(path(assembly));
            case RESISTANCE -> resistance(path(assembly), assembly);
            default -> throw new IllegalArgumentException(calculation);
        };
    }

    static String path(Assembly assembly) {
        return "enclosure.assemblies[" + assembly.id() + "]";
    }

    private static List<Binding> controlLayers() {
        return List.of(
                Binding.of("assemblies", "enclosure.assemblies"),
                Binding.of("junctions", "enclosure.junctions"),
                Binding.of("expectedHoles", "enclosure.expectedHoles"),
                Binding.of("holes", "enclosure.holes"),
                Binding.of("windowAreaM2", "enclosure.windows.areaM2"));
    }

    private static List<Binding> findings(String assembly) {
        return List.of(
                Binding.of("kind", assembly + ".kind"),
                Binding.of("outside", assembly + ".outside"),
                Binding.of("layers", assembly + ".layers"),
                Binding.of("cladding", assembly + ".cladding"),
                Binding.of("membrane", "enclosure.membrane"));
    }

    private static List<Binding> resistance(String path, Assembly assembly) {
        List<Binding> bindings = new ArrayList<>(List.of(
                Binding.of("placement.kind", path + ".kind"),
                Binding.of("placement.outside", path + ".outside"),
                Binding.of("layers", path + ".layers")));
        for (Fastener fastener : assembly.fasteners()) {
            if (fastener.throughLayerId() != null) {
                bindings.add(Binding.of(
                        "fasteners[" + fastener.id() + "]",
                        path + ".fasteners[" + fastener.id() + "]",
                        Map.of("layerId", "throughLayerId")));
            }
        }
        return bindings;
    }

    /** U-values follow the proofs of the assemblies; one without a proof enters as it computes now. */
    private static List<Binding> heatLoss(Snapshot snapshot, Function<String, Optional<String>> uValue) {
        EnclosurePart enclosure = snapshot.parts().enclosure();
        List<Binding> bindings = new ArrayList<>();
        bindings.add(Binding.of("areaDimensions", "enclosure.areaDimensions"));
        for (Assembly assembly : enclosure.assemblies()) {
            if (!Boolean.FALSE.equals(assembly.bounds())) {
                String row = "elements[" + assembly.id() + "]";
                bindings.add(Binding.of(row + ".id", path(assembly) + ".id"));
                bindings.add(Binding.of(row + ".label", path(assembly) + ".label"));
                bindings.add(Binding.of(row + ".areaM2", path(assembly) + ".areaM2"));
                String proof = proofOf(snapshot, RESISTANCE, assembly.id());
                String u = row + "." + U_VALUE;
                if (proof != null) {
                    bindings.add(Binding.of(u, "results." + proof + "." + U_VALUE));
                } else {
                    uValue.apply(assembly.id())
                            .ifPresent(now -> bindings.add(Binding.typed(
                                    u, now, "computed from the layers as they are; no proof of it is kept yet")));
                }
            }
        }
        if (enclosure.windows() != null) {
            String row = "elements[windows]";
            bindings.add(Binding.typed(row + ".id", "windows", "all windows together"));
            bindings.add(Binding.typed(row + ".label", "Windows", "all windows together"));
            bindings.add(Binding.of(row + ".areaM2", "enclosure.windows.areaM2"));
            bindings.add(Binding.of(row + "." + U_VALUE, "enclosure.windows.uValueWPerM2K"));
        }
        bindings.add(Binding.of("linearBridges", "enclosure.linearBridges"));
        bindings.add(Binding.of("pointBridges", "enclosure.pointBridges"));
        return bindings;
    }

    /** The proof of a calculation about one assembly, or null where none is kept. */
    static @Nullable String proofOf(Snapshot snapshot, String calculation, String assembly) {
        String layers = "enclosure.assemblies[" + assembly + "].layers";
        return snapshot.proofs().values().stream()
                .filter(proof -> calculation.equals(proof.content().calculation()))
                .filter(proof -> proof.content().bindings().stream().anyMatch(binding -> layers.equals(binding.path())))
                .map(Proof::key)
                .findFirst()
                .orElse(null);
    }
}
