package oakum.physics.controllayer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import oakum.physics.controllayer.AssemblyFindings.AssemblyLayer;
import oakum.physics.controllayer.AssemblyFindings.Input;
import oakum.physics.envelope.Outside;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import org.jspecify.annotations.Nullable;

/**
 * How tight an assembly is on both sides of its innermost insulation; foil on foam outside of it counts with the outside.
 * In winter the inside is dry and the outside damp: inside
 * counts by dry cup for holding vapour back, outside by wet cup; drying counts by wet cup on both sides.
 *
 * @param insideDryM sum of the equivalent air layers inside of it, dry; null where a layer's value is not known
 * @param outsideWetM sum outside of it as far as the first vented layer, wet; null where a layer's value is not known
 */
record Drying(@Nullable Double insideDryM, @Nullable Double outsideWetM, List<Finding> findings) {
    /** Mean humidity of both faces in the dry and the wet cup. */
    private static final double DRY_CUP_HUMIDITY = 0.25;

    private static final double WET_CUP_HUMIDITY = 0.75;

    static Drying of(Input input) {
        List<AssemblyLayer> layers = input.layers();
        int from = AssemblyFindings.first(layers, Control.THERMAL);
        if (from < 0 || input.outside() == Outside.GROUND) {
            return new Drying(null, null, List.of());
        }
        int vented = layers.size();
        for (int i = layers.size() - 1; i >= 0; i--) {
            vented = layers.get(i).isVented() ? i : vented;
        }
        return judged(layers.subList(0, from), vented > from ? layers.subList(from + 1, vented) : List.of());
    }

    private static Drying judged(List<AssemblyLayer> inside, List<AssemblyLayer> outside) {
        List<Finding> findings = new ArrayList<>();
        List<AssemblyLayer> unknown = new ArrayList<>();
        inside.stream().filter(Drying::isUnknown).forEach(unknown::add);
        outside.stream().filter(Drying::isUnknown).forEach(unknown::add);
        if (!unknown.isEmpty()) {
            findings.add(Finding.of(
                    "vapour-resistance-not-known",
                    FindingWeight.NOT_PROVEN,
                    unknown.get(0).id(),
                    "No vapour resistance is known for "
                            + String.join(
                                    ", ",
                                    unknown.stream().map(AssemblyLayer::label).toList())
                            + ".",
                    "Without it nobody can say to which side the assembly dries.",
                    Rules.ONE_SIDE_OPEN));
            return new Drying(null, null, findings);
        }
        double insideDry = sum(inside, false);
        double insideWet = sum(inside, true);
        double outsideWet = sum(outside, true);
        if (insideWet > AssemblyFindings.TIGHT_SD_M && outsideWet > AssemblyFindings.TIGHT_SD_M) {
            findings.add(Finding.of(
                    "vapour-closed-both-sides",
                    FindingWeight.FAILS,
                    "",
                    String.format(
                            Locale.ROOT,
                            "Vapour-closed on both sides: %.1f m inside of the innermost insulation and %.1f m"
                                    + " outside of it, both by wet cup; above 3.5 m a side counts as closed.",
                            insideWet,
                            outsideWet),
                    "Water that gets in by a leak, by air or with the building work has no way out.",
                    Rules.TIGHT));
        } else if (insideDry < AssemblyFindings.INSIDE_TO_OUTSIDE * outsideWet) {
            findings.add(Finding.of(
                    "outside-not-open-enough",
                    FindingWeight.LOOK,
                    "",
                    String.format(
                            Locale.ROOT,
                            "Inside of the innermost insulation %.2f m by dry cup, outside of it %.2f m by wet cup: %.1f to one,"
                                    + " where five to one is the habit in the cold.",
                            insideDry,
                            outsideWet,
                            insideDry / outsideWet),
                    "More vapour may reach the cold side in winter than leaves it: let the computed year decide.",
                    Rules.ONE_SIDE_OPEN));
        }
        return new Drying(insideDry, outsideWet, findings);
    }

    /** Air layers hold back nothing that counts. */
    private static boolean isUnknown(AssemblyLayer layer) {
        return layer.ventilation() == null && sd(layer, true) == null;
    }

    private static double sum(List<AssemblyLayer> layers, boolean wet) {
        return layers.stream()
                .mapToDouble(layer -> Objects.requireNonNullElse(sd(layer, wet), 0.0))
                .sum();
    }

    private static @Nullable Double sd(AssemblyLayer layer, boolean wet) {
        Double dryCup = layer.sdDryM();
        Double wetCup = layer.sdWetM();
        if (dryCup != null || wetCup != null) {
            Double typed = wet ? wetCup : dryCup;
            return typed != null ? typed : dryCup != null ? dryCup : wetCup;
        }
        String id = layer.materialId();
        if (id == null) {
            return null;
        }
        Material material = MaterialLibrary.require("layers[" + layer.id() + "].materialId", id);
        return material.knows(MaterialProperty.VAPOUR_RESISTANCE)
                ? material.diffusionThicknessM(layer.thicknessM(), wet ? WET_CUP_HUMIDITY : DRY_CUP_HUMIDITY)
                : null;
    }
}
