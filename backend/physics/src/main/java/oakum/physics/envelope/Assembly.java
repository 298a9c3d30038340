package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import org.jspecify.annotations.Nullable;

/**
 * An assembly as heat meets it: the layers that count, from inside outwards, and both surfaces. A well-ventilated air
 * layer and all outside of it are left out, with sheltered air in their place (ISO 6946:2017 clause 6.9.4).
 */
final class Assembly {
    private static final double FROM_SLIGHTLY_M2_PER_M = 500e-6;
    private static final double FROM_WELL_M2_PER_M = 1500e-6;
    private static final double METAL_W_PER_M_K = 10;
    private static final double STUD_DEPTH_M = 0.08;
    private static final double LEAST_FRAMING = 0.15;
    private static final double TIGHT_SD_M = 10;
    private static final double MOST_INSIDE_TIGHT_LAYER = 1.0 / 3;

    private final Placement placement;
    private final List<LayerRow> rows;
    private final List<ThermalLayer> layers;
    private final int ventilatedAt;
    private final int slightlyAt;
    private final List<Notice> notices = new ArrayList<>();

    private Assembly(Placement placement, List<LayerRow> rows) {
        this.placement = placement;
        this.rows = rows;
        checkNames(rows);
        int well = -1;
        int slightly = -1;
        List<ThermalLayer> counted = new ArrayList<>();
        for (int i = 0; i < rows.size() && well < 0; i++) {
            switch (moving(rows.get(i), i)) {
                case WELL -> well = i;
                case SLIGHTLY -> {
                    if (slightly >= 0) {
                        throw Refused.of(
                                pointer(i),
                                rows.get(i).id(),
                                "Layer \"" + rows.get(i).name() + "\" (" + pointer(i) + ") is the second slightly"
                                        + " ventilated air layer; the standard knows one.",
                                Citations.VENTILATED);
                    }
                    slightly = i;
                }
                case NONE -> {}
            }
            if (well < 0) {
                counted.add(ThermalLayer.of(rows.get(i), pointer(i), HeatFlow.of(placement.kind())));
            }
        }
        if (counted.isEmpty()) {
            throw Refused.of(
                    pointer(0),
                    rows.get(0).id(),
                    "\"" + rows.get(0).name() + "\" (" + pointer(0) + ") is a well-ventilated air layer with nothing"
                            + " inside of it; layers are listed from inside.",
                    Citations.VENTILATED);
        }
        this.layers = List.copyOf(counted);
        this.ventilatedAt = well;
        this.slightlyAt = slightly;
        int framed = groups(layers.size()).size();
        if (framed > CombinedMethod.MOST_FRAMED_GROUPS + 1) {
            throw Refused.of(
                    "layers",
                    Integer.toString(framed - 1),
                    "At most " + CombinedMethod.MOST_FRAMED_GROUPS + " layers may have framing of their own.",
                    Citations.COMBINED);
        }
        if (surfaces()
                        + layers.stream()
                                .mapToDouble(ThermalLayer::resistanceM2KPerW)
                                .sum()
                <= 0) {
            throw Refused.of(
                    "layers", "", "The layers and surfaces have no thermal resistance at all.", Citations.COMBINED);
        }
        findings();
    }

    /**
     * @param placement which face it is
     * @param rows from inside outwards
     * @throws Refused naming the layer and what is wrong with it
     */
    static Assembly of(Placement placement, List<LayerRow> rows) {
        return new Assembly(placement, rows);
    }

    private static void checkNames(List<LayerRow> rows) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < rows.size(); i++) {
            LayerRow row = rows.get(i);
            String on = row.framingOnId();
            if (on != null && !seen.contains(on)) {
                throw Refused.of(
                        pointer(i) + ".framingOnId",
                        on,
                        "The framing of layer \"" + row.name() + "\" stands on \"" + on + "\" (" + pointer(i)
                                + ".framingOnId), which is no layer further in.",
                        Citations.COMBINED);
            }
            if (row.id().isBlank() || !seen.add(row.id())) {
                throw Refused.of(
                        pointer(i) + ".id",
                        row.id(),
                        "Each layer needs a short name of its own; \"" + row.id() + "\" (" + pointer(i)
                                + ".id) is none.",
                        Citations.PROPOSED);
            }
        }
    }

    static String pointer(int i) {
        return "layers[" + i + "]";
    }

    /** How an air layer counts; its opening decides where it is known. */
    private AirLayerVentilation moving(LayerRow row, int i) {
        AirLayerVentilation said = row.ventilation();
        Double opening = row.openingM2PerM();
        if (opening == null) {
            if (said == AirLayerVentilation.SLIGHTLY) {
                throw Refused.of(
                        pointer(i) + ".openingM2PerM",
                        "",
                        "Layer \"" + row.name() + "\" is slightly ventilated, so the area of its openings ("
                                + pointer(i) + ".openingM2PerM) is needed: 500 to 1500 mm² on a metre.",
                        Citations.VENTILATED);
            }
            return said == null ? AirLayerVentilation.NONE : said;
        }
        AirLayerVentilation is = opening <= FROM_SLIGHTLY_M2_PER_M
                ? AirLayerVentilation.NONE
                : opening < FROM_WELL_M2_PER_M ? AirLayerVentilation.SLIGHTLY : AirLayerVentilation.WELL;
        if (said != null && said != is) {
            notices.add(Notice.advice(
                    "opening-decides-ventilation",
                    pointer(i) + ".ventilation",
                    String.format(
                            Locale.ROOT,
                            "%s is said to be %s, but with openings of %.0f mm² on a metre it counts as %s.",
                            row.name(),
                            said.label(),
                            1e6 * opening,
                            is.label()),
                    Citations.VENTILATED));
        }
        return is;
    }

    private void findings() {
        Double typed = placement.outsideSurfaceM2KPerW();
        if (ventilatedAt >= 0) {
            notices.add(Notice.note(
                    "layers-outside-ventilated-layer-left-out",
                    pointer(ventilatedAt),
                    "Outdoor air moves freely through " + rows.get(ventilatedAt).name()
                            + ": it and all outside of it are left out, with sheltered air in their place.",
                    Citations.VENTILATED));
            if (typed != null && typed < placement.shelteredSurface()) {
                notices.add(Notice.advice(
                        "surface-to-wind-behind-ventilated-layer",
                        "placement.outsideSurfaceM2KPerW",
                        "An outside surface of " + Canonical.text(typed)
                                + " m²·K/W belongs to a face in the wind; behind "
                                + rows.get(ventilatedAt).name() + " it is "
                                + Canonical.text(placement.shelteredSurface()) + " m²·K/W. The typed value was used.",
                        Citations.VENTILATED));
            }
        } else {
            airBehindCladding();
        }
        framingFromSpacing();
        double framing = layers.stream()
                .mapToDouble(ThermalLayer::framingConductivityWPerMK)
                .max()
                .orElse(0);
        if (framing >= METAL_W_PER_M_K) {
            notices.add(Notice.rejected(
                    "metal-framing",
                    "layers",
                    "Metal bridges the insulation (" + Canonical.text(framing)
                            + " W/(m·K)): the combined method does not hold; compute the detail in two dimensions.",
                    Citations.COMBINED));
        }
        tightLayerOutsideInsulation();
    }

    private void airBehindCladding() {
        int last = layers.size() - 2;
        if (last >= 0
                && placement.outsideSurface() > 0
                && layers.get(last).row().isAir()
                && last != slightlyAt
                && last > 0) {
            notices.add(Notice.note(
                    "air-layer-behind-cladding-counted",
                    pointer(last),
                    layers.get(last).row().name() + " and "
                            + layers.get(last + 1).row().name()
                            + " are counted, as still air behind closed cladding. If the cladding is ventilated they are"
                            + " not.",
                    Citations.VENTILATED));
        }
    }

    private void framingFromSpacing() {
        if (placement.kind() != AssemblyKind.WALL) {
            return;
        }
        double most = layers.stream()
                .filter(layer -> layer.row().thicknessM() >= STUD_DEPTH_M)
                .mapToDouble(ThermalLayer::framingFraction)
                .max()
                .orElse(0);
        if (most > 0 && most < LEAST_FRAMING) {
            notices.add(Notice.advice(
                    "framing-from-spacing-alone",
                    "layers",
                    String.format(
                            Locale.ROOT,
                            "A share of framing of %.2f counts the studs alone: plates, corners, headers and openings make"
                                    + " it 0.23 to 0.25, with advanced framing 0.15 to 0.18.",
                            most),
                    Citations.FRAMING));
        }
    }

    private void tightLayerOutsideInsulation() {
        double all =
                layers.stream().mapToDouble(ThermalLayer::resistanceM2KPerW).sum();
        double inside = 0;
        for (int i = 0; i < layers.size(); i++) {
            ThermalLayer layer = layers.get(i);
            double sd = sheetThickness(layer.row(), i);
            if (sd >= TIGHT_SD_M && inside > MOST_INSIDE_TIGHT_LAYER * all && outdoors()) {
                notices.add(Notice.advice(
                        "tight-layer-on-cold-side",
                        pointer(i),
                        String.format(
                                Locale.ROOT,
                                "%s holds vapour back (s_d %.4g m) with %.0f %% of the thermal resistance on its warm side:"
                                        + " in winter it is cold and vapour from inside condenses on it.",
                                layer.row().name(),
                                sd,
                                100 * inside / all),
                        Citations.ORDER));
            }
            inside += layer.resistanceM2KPerW();
        }
    }

    private boolean outdoors() {
        return placement.outside() != Outside.GROUND && placement.outsideSurface() > 0;
    }

    /** Diffusion thickness of a membrane or coating; 0 for anything else. */
    private static double sheetThickness(LayerRow row, int i) {
        if (row.materialId() == null && row.sdDryM() == null) {
            return 0;
        }
        var material = row.material(pointer(i));
        return material.isSheet() ? material.diffusionThicknessM(row.thicknessM(), LayerRow.WET_CUP_HUMIDITY) : 0;
    }

    /** The layers that count, from inside. */
    List<ThermalLayer> layers() {
        return layers;
    }

    List<Notice> notices() {
        return List.copyOf(notices);
    }

    double insideSurface() {
        return placement.insideSurface();
    }

    /** The outside surface of the layers that count. */
    double outsideSurface() {
        return ventilatedAt >= 0 ? placement.behindVentilatedLayer() : placement.outsideSurface();
    }

    /** The layer of that short name among those that count, or null. */
    @Nullable
    ThermalLayer layer(String id) {
        return layers.stream().filter(l -> l.row().id().equals(id)).findFirst().orElse(null);
    }

    /** Both limits; of a slightly ventilated layer in between those of a still and of a well-ventilated one. */
    CombinedMethod resistance() {
        CombinedMethod still = CombinedMethod.of(groups(layers.size()), surfaces());
        if (slightlyAt < 0) {
            return still;
        }
        CombinedMethod ventilated =
                CombinedMethod.of(groups(slightlyAt), placement.insideSurface() + placement.behindVentilatedLayer());
        Double opening = rows.get(slightlyAt).openingM2PerM();
        double share = opening == null
                ? 0
                : (opening - FROM_SLIGHTLY_M2_PER_M) / (FROM_WELL_M2_PER_M - FROM_SLIGHTLY_M2_PER_M);
        return new CombinedMethod(
                between(share, still.upperM2KPerW(), ventilated.upperM2KPerW()),
                between(share, still.lowerM2KPerW(), ventilated.lowerM2KPerW()));
    }

    /** ISO 6946:2017: (1500 − A_v)/1000 · R_u + (A_v − 500)/1000 · R_v, with the share (A_v − 500)/1000. */
    static double between(double share, double still, double ventilated) {
        return (1 - share) * still + share * ventilated;
    }

    private double surfaces() {
        return placement.insideSurface() + outsideSurface();
    }

    private List<List<ThermalLayer>> groups(int counted) {
        return CombinedMethod.groups(layers.subList(0, counted));
    }
}
