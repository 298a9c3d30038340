package oakum.physics.envelope;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import org.jspecify.annotations.Nullable;

/**
 * One layer of an assembly, listed from inside outwards. Its values come from the library's material it names; a typed
 * value wins over the library's.
 */
public record LayerRow(
        @Entry(label = "Short name", help = "Names the row; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Name") @Nullable String label,

        @Entry(label = "Material of the library", help = "Its short name there.", maxLength = 60) @Nullable
        String materialId,

        @Quantity(
                label = "Thickness",
                symbol = "d",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 2,
                limitSource = InputRange.PLAUSIBLE,
                help = "0 for a membrane or a coating.")
        double thicknessM,

        @Quantity(
                label = "Conductivity",
                symbol = "λ",
                unit = Unit.WATT_PER_METRE_KELVIN,
                min = 0.001,
                max = 500,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double conductivityWPerMK,

        @Quantity(
                label = "Thermal resistance",
                symbol = "R",
                unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                min = 0,
                max = 50,
                limitSource = InputRange.PLAUSIBLE,
                help = "In place of the conductivity.")
        @Nullable
        Double thermalResistanceM2KPerW,

        @Quantity(
                label = "Equivalent air layer, dry",
                symbol = "s_d",
                unit = Unit.METRE,
                min = 0,
                max = 5000,
                limitSource = InputRange.PLAUSIBLE,
                help = "From the data sheet, dry cup.")
        @Nullable
        Double sdDryM,

        @Quantity(
                label = "Equivalent air layer, wet",
                symbol = "s_d,wet",
                unit = Unit.METRE,
                min = 0,
                max = 5000,
                limitSource = InputRange.PLAUSIBLE,
                help = "From the data sheet, wet cup. Left out: as dry.")
        @Nullable
        Double sdWetM,

        @Entry(label = "Framing through this layer", help = "Material of the library.", maxLength = 60) @Nullable
        String framingMaterialId,

        @Quantity(
                label = "Share of framing",
                symbol = "f",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a share of the area")
        @Nullable
        Double framingFraction,

        @Quantity(
                label = "Conductivity of the framing",
                symbol = "λ_f",
                unit = Unit.WATT_PER_METRE_KELVIN,
                min = 0.001,
                max = 500,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double framingConductivityWPerMK,

        @Entry(
                label = "Framing stands on that of layer",
                help =
                        "Short name of a layer further in, where the pieces lie one on the other all along. Left out: they"
                                + " cross, or stand independently.",
                maxLength = 40)
        @Nullable
        String framingOnId,

        @Entry(label = "Air layer", help = "How much outdoor air moves through it; left out: no air layer.") @Nullable
        AirLayerVentilation ventilation,

        @Quantity(
                label = "Opening to outdoors",
                symbol = "A_v",
                unit = Unit.SQUARE_METRE_PER_METRE,
                min = 0,
                max = 0.3,
                limitSource = InputRange.PLAUSIBLE,
                help = "Of an air layer, on a metre of length.")
        @Nullable
        Double openingM2PerM) {
    private static final Source TYPED = Source.seen("typed");

    /** Mean humidity of both faces in the dry and the wet cup. */
    static final double DRY_CUP_HUMIDITY = 0.25;

    static final double WET_CUP_HUMIDITY = 0.75;

    /** Still air resists vapour as if it were so thick, whatever its depth. */
    static final double STILL_AIR_SD_M = 0.01;

    /** A layer that resists no vapour at all still needs a place on the scale of diffusion thickness. */
    static final double THINNEST_SD_M = 0.001;

    /** What people call it. */
    public String name() {
        String given = label;
        return given == null || given.isBlank() ? id : given;
    }

    /** Whether it is a layer of air. */
    public boolean isAir() {
        return ventilation != null || openingM2PerM != null;
    }

    /**
     * The material of the layer: the library's, with the typed values in place of its own. It knows no more than the two
     * say.
     *
     * @param field pointer to the row
     * @throws oakum.physics.calculation.Refused where the library has no such material or the values contradict each other
     */
    public Material material(String field) {
        Material named = materialId == null ? null : MaterialLibrary.require(field + ".materialId", materialId);
        checkCups(field);
        if (named != null && conductivityWPerMK == null && sdDryM == null) {
            return named;
        }
        Map<String, String> leaves = new LinkedHashMap<>();
        Map<MaterialProperty, Source> sources = new EnumMap<>(MaterialProperty.class);
        if (named != null) {
            leaves.putAll(Canonical.flatten(named.values()));
            for (MaterialProperty property : MaterialProperty.values()) {
                sources.put(property, named.source(property));
            }
        }
        leaves.put("id", id);
        leaves.put("label", name());
        leaves.put("source", TYPED.citation());
        leaves.put("status", TYPED.status().name());
        if (conductivityWPerMK != null) {
            leaves.put("conductivityWPerMK", Canonical.text(conductivityWPerMK));
            sources.put(MaterialProperty.CONDUCTIVITY, TYPED);
        }
        if (sdDryM != null) {
            leaves.keySet().removeIf(k -> k.startsWith("resistanceFactors") || k.startsWith("diffusionThicknesses"));
            point(leaves, 0, DRY_CUP_HUMIDITY, sdDryM);
            if (sdWetM != null) {
                point(leaves, 1, WET_CUP_HUMIDITY, sdWetM);
            }
            sources.put(MaterialProperty.VAPOUR_RESISTANCE, TYPED);
        }
        return Material.of(Canonical.read(MaterialInput.class, leaves), sources);
    }

    private void checkCups(String field) {
        if (sdWetM == null) {
            return;
        }
        if (sdDryM == null) {
            throw Refused.of(
                    field + ".sdWetM",
                    Canonical.text(sdWetM),
                    "Layer \"" + name() + "\": the wet cup (" + field
                            + ".sdWetM) needs the dry cup beside it (sdDryM).",
                    Citations.CUPS);
        }
        if (sdWetM > sdDryM) {
            throw Refused.of(
                    field + ".sdWetM",
                    Canonical.text(sdWetM),
                    "Layer \"" + name() + "\": s_d wet (" + field + ".sdWetM) = " + Canonical.text(sdWetM)
                            + " m is above s_d dry = " + Canonical.text(sdDryM) + " m; materials only open as they get"
                            + " wetter.",
                    Citations.CUPS);
        }
    }

    private static void point(Map<String, String> leaves, int i, double humidity, double sd) {
        String at = "diffusionThicknesses[" + i + "].";
        leaves.put(at + "humidityFraction", Canonical.text(humidity));
        leaves.put(at + "diffusionThicknessM", Canonical.text(Math.max(sd, THINNEST_SD_M)));
    }
}
