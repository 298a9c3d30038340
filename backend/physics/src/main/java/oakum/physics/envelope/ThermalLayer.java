package oakum.physics.envelope;

import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import org.jspecify.annotations.Nullable;

/**
 * One layer as heat meets it.
 *
 * @param row what was typed
 * @param resistanceM2KPerW between the framing
 * @param conductivityWPerMK it was computed with; null where the resistance came otherwise
 * @param framingFraction share of the area that is framing
 * @param framingResistanceM2KPerW through the framing; that of the layer where there is none
 * @param framingConductivityWPerMK of the framing; 0 where there is none
 * @param valuesFrom where the values came from
 */
record ThermalLayer(
        LayerRow row,
        double resistanceM2KPerW,
        @Nullable Double conductivityWPerMK,
        double framingFraction,
        double framingResistanceM2KPerW,
        double framingConductivityWPerMK,
        String valuesFrom) {

    /**
     * Resolves a row.
     *
     * @param field pointer to the row
     * @param flow decides the resistance of an air layer
     * @throws Refused naming the layer and what it lacks
     */
    static ThermalLayer of(LayerRow row, String field, HeatFlow flow) {
        ThermalLayer clear = clear(row, field, flow);
        double fraction = row.framingFraction() == null ? 0 : row.framingFraction();
        if (fraction == 0) {
            return clear;
        }
        String from;
        double conductivity;
        if (row.framingConductivityWPerMK() != null) {
            conductivity = row.framingConductivityWPerMK();
            from = "framing typed";
        } else if (row.framingMaterialId() != null) {
            Material framing = MaterialLibrary.require(field + ".framingMaterialId", row.framingMaterialId());
            framing.require(field + ".framingMaterialId", MaterialProperty.CONDUCTIVITY);
            conductivity = framing.conductivityWPerMK();
            from = "framing " + fromLibrary(framing);
        } else {
            throw refused(
                    row,
                    field + ".framingConductivityWPerMK",
                    "has a share of framing of " + Canonical.text(fraction)
                            + " but neither its material (framingMaterialId) nor its conductivity");
        }
        return new ThermalLayer(
                row,
                clear.resistanceM2KPerW(),
                clear.conductivityWPerMK(),
                fraction,
                thickness(row, field) / conductivity,
                conductivity,
                clear.valuesFrom() + "; " + from);
    }

    private static ThermalLayer clear(LayerRow row, String field, HeatFlow flow) {
        if (row.thermalResistanceM2KPerW() != null) {
            return unframed(row, row.thermalResistanceM2KPerW(), null, "resistance typed");
        }
        if (row.isAir()) {
            if (row.thicknessM() >= HeatFlow.THICKEST_AIR_LAYER_M) {
                throw refused(
                        row,
                        field + ".thicknessM",
                        "is an air layer of " + Canonical.text(row.thicknessM())
                                + " m; the table ends below 0.3 m, so type its resistance");
            }
            return unframed(
                    row,
                    flow.airLayerM2KPerW(thickness(row, field)),
                    null,
                    "air layer, " + Citations.SURFACES.printed());
        }
        if (row.conductivityWPerMK() != null) {
            return solid(row, field, row.conductivityWPerMK(), "conductivity typed");
        }
        Material material = saysMaterial(row) ? row.material(field) : null;
        if (material != null && material.knows(MaterialProperty.CONDUCTIVITY)) {
            return solid(row, field, material.conductivityWPerMK(), fromLibrary(material));
        }
        if (material != null && material.isSheet()) {
            return unframed(row, 0, null, "membrane or coating, no resistance");
        }
        throw refused(
                row,
                field,
                "has neither a material of the library, a conductivity, a resistance nor, as a membrane, a diffusion"
                        + " thickness");
    }

    private static boolean saysMaterial(LayerRow row) {
        return row.materialId() != null || row.sdDryM() != null || row.sdWetM() != null;
    }

    private static ThermalLayer solid(LayerRow row, String field, double conductivity, String from) {
        return unframed(row, thickness(row, field) / conductivity, conductivity, from);
    }

    private static ThermalLayer unframed(LayerRow row, double resistance, @Nullable Double conductivity, String from) {
        return new ThermalLayer(row, resistance, conductivity, 0, resistance, 0, from);
    }

    private static String fromLibrary(Material material) {
        return "library, " + material.label() + ": "
                + material.source(MaterialProperty.CONDUCTIVITY).printed();
    }

    private static double thickness(LayerRow row, String field) {
        if (!(row.thicknessM() > 0)) {
            throw refused(
                    row, field + ".thicknessM", "has no thickness; only a membrane or a coating may be 0 m thick");
        }
        return row.thicknessM();
    }

    private static Refused refused(LayerRow row, String field, String what) {
        return Refused.of(
                field, row.id(), "Layer \"" + row.name() + "\" (" + field + ") " + what + ".", Citations.COMBINED);
    }
}
