package oakum.portal.houserecord;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import oakum.physics.controllayer.Cladding;
import oakum.physics.envelope.AssemblyKind;
import oakum.physics.envelope.Outside;
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
    static final String CONDENSATION = "condensation-monthly";
    static final String DEW_POINT = "dew-point-of-a-wall";
    static final String OPEN_JOINTS = "open-joints";
    static final String WALL_MOISTURE = "wall-moisture";
    static final String HUMIDITY_CEILING = "humidity-ceiling";
    static final String U_VALUE = "uValueWPerM2K";

    /** Calculations about one assembly. */
    static final List<String> PER_ASSEMBLY =
            List.of(FINDINGS, RESISTANCE, CONDENSATION, DEW_POINT, OPEN_JOINTS, WALL_MOISTURE, HUMIDITY_CEILING);

    /** Those of them that run for seconds, as jobs: no page computes them on the way. */
    static final List<String> LONG = List.of(WALL_MOISTURE, HUMIDITY_CEILING);

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

    /** Whether a calculation means anything for an assembly: no vapour balance to the ground, no joints without boards. */
    static boolean applies(String calculation, Assembly assembly) {
        return switch (calculation) {
            case CONDENSATION, DEW_POINT, WALL_MOISTURE, HUMIDITY_CEILING -> assembly.outside() != Outside.GROUND;
            case OPEN_JOINTS -> {
                Cladding cladding = assembly.cladding();
                yield cladding != null && cladding.jointWidthM() != null && cladding.boardWidthM() != null;
            }
            default -> true;
        };
    }

    /** Bindings of a calculation about one assembly. */
    static List<Binding> ofAssembly(String calculation, Snapshot snapshot, Assembly assembly) {
        return switch (calculation) {
            case FINDINGS -> findings(path(assembly));
            case RESISTANCE -> resistance(path(assembly), assembly);
            case CONDENSATION -> condensation(path(assembly));
            case DEW_POINT -> dewPoint(path(assembly), snapshot);
            case OPEN_JOINTS -> openJoints(path(assembly));
            case WALL_MOISTURE, HUMIDITY_CEILING -> wallMoisture(path(assembly), assembly);
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

    private static List<Binding> layers(String path) {
        return List.of(
                Binding.of("placement.kind", path + ".kind"),
                Binding.of("placement.outside", path + ".outside"),
                Binding.of("layers", path + ".layers"));
    }

    private static List<Binding> condensation(String path) {
        List<Binding> bindings = new ArrayList<>(layers(path));
        bindings.add(Binding.of("months", "moisture.outdoorMonths"));
        bindings.add(Binding.typed(
                "indoorHumidity", "CLASS_2", "dwelling with normal occupancy and ventilation (ISO 13788, class 2)"));
        return bindings;
    }

    /** On the coldest day that the house is designed for, at the most indoor humidity that it may then have. */
    private static List<Binding> dewPoint(String path, Snapshot snapshot) {
        List<Binding> bindings = new ArrayList<>(layers(path));
        bindings.add(Binding.of("climate.indoorC", "heat.indoorC"));
        bindings.add(Binding.of("climate.outdoorC", "house.designOutdoorC"));
        bindings.add(Binding.typed("climate.outdoorHumidityFraction", "0.8", "usual in deep cold, assumed"));
        snapshot.parts().moisture().limits().stream()
                .min(Comparator.comparingDouble(MoisturePart.HumidityLimit::outdoorC))
                .ifPresent(limit -> bindings.add(Binding.of(
                        "climate.indoorHumidityFraction",
                        "moisture.limits[" + limit.id() + "].relativeHumidityFraction")));
        return bindings;
    }

    /**
     * The usual test of a wall where the record does not say otherwise: a value of the record goes before the one that is
     * assumed, and whoever asks overrides both.
     */
    private static List<Binding> wallMoisture(String path, Assembly assembly) {
        String usual = "usual test, assumed";
        return List.of(
                Binding.of("layers", path + ".layers"),
                Binding.of("weatherHash", "house.weatherHash"),
                Binding.typed("cut", "THROUGH_FILL", usual),
                Binding.typed("azimuthDeg", "0", "north, where most walls are wettest, assumed"),
                Binding.typed(
                        "tiltDeg",
                        assembly.kind() == AssemblyKind.WALL ? "90" : "0",
                        assembly.kind() == AssemblyKind.WALL ? "upright" : "level, assumed"),
                Binding.of("azimuthDeg", path + ".azimuthDeg"),
                Binding.of("tiltDeg", path + ".tiltDeg"),
                Binding.typed("absorptanceFraction", "0.6", "wood, weathered, assumed"),
                Binding.typed("indoor", "CLASS_DWELLING", usual),
                Binding.typed("rainEntryFraction", "0", "no rain comes behind the cladding, assumed"),
                Binding.typed("cavityAirChangesPerH", "100", "lowest measured behind boards on battens, assumed"),
                Binding.typed("startHumidityFraction", "0.8", "materials kept dry (ASHRAE 160)"),
                Binding.typed("startMonth", "10", usual),
                Binding.typed("years", "3", usual));
    }

    private static List<Binding> openJoints(String path) {
        return List.of(
                Binding.of("jointM", path + ".cladding.jointWidthM"),
                Binding.of("boardM", path + ".cladding.boardWidthM"),
                Binding.of("ratedForSun", "enclosure.membrane.permanentSun"),
                Binding.of("jointLimitM", "enclosure.membrane.maxJointWidthM"),
                Binding.of("openLimitFraction", "enclosure.membrane.maxOpenFraction"),
                Binding.of("sunLimitD", "enclosure.membrane.sunLimitDays"),
                Binding.typed("usedD", "0", "the running clocks of the site count them"),
                Binding.typed("plannedD", "0", "the running clocks of the site count them"));
    }

    private static List<Binding> resistance(String path, Assembly assembly) {
        List<Binding> bindings = new ArrayList<>(layers(path));
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
