package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import oakum.physics.calculation.Refused;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialProperty;
import oakum.physics.moistair.Iso13788Saturation;

/**
 * An assembly as vapour meets it in steady state: nodes from the outside surface to the inside one, at every face of a
 * layer and so close in between that no piece resists heat by more than 0.25 m² K/W (ISO 13788 clause 6.4.1). The path
 * runs between the framing. Vapour meets no resistance at surfaces.
 */
final class VapourPath {
    private static final double THICKEST_PIECE_M2K_PER_W = 0.25;

    /**
     * One node.
     *
     * @param name where it lies
     * @param face whether two layers, or a layer and the air, meet here
     * @param depthM from inside
     * @param resistanceM2KPerW from the outside air
     * @param sdM diffusion thickness from the outside surface
     */
    record Node(String name, boolean face, double depthM, double resistanceM2KPerW, double sdM) {}

    private final List<Node> nodes;
    private final List<Double> layerSd;
    private final Assembly assembly;
    private final double resistance;

    /**
     * @throws Refused naming a layer that has no vapour resistance
     */
    VapourPath(Assembly assembly, CupValues cup) {
        this.assembly = assembly;
        List<ThermalLayer> fromOutside = new ArrayList<>(assembly.layers());
        List<Double> sds = new ArrayList<>();
        double depth = 0;
        for (int i = 0; i < fromOutside.size(); i++) {
            sds.add(sdM(fromOutside.get(i).row(), i, cup.meanHumidityFraction()));
            depth += fromOutside.get(i).row().thicknessM();
        }
        this.layerSd = List.copyOf(sds);
        Collections.reverse(fromOutside);
        Collections.reverse(sds);
        List<Node> found = new ArrayList<>();
        double r = assembly.outsideSurface();
        double sd = 0;
        found.add(new Node("outside surface", true, depth, r, sd));
        for (int i = 0; i < fromOutside.size(); i++) {
            ThermalLayer layer = fromOutside.get(i);
            int pieces = Math.max(1, (int) Math.ceil(layer.resistanceM2KPerW() / THICKEST_PIECE_M2K_PER_W - 1e-9));
            for (int k = 1; k <= pieces; k++) {
                double share = (double) k / pieces;
                boolean last = k == pieces;
                String name = !last
                        ? "within " + layer.row().name()
                        : i + 1 < fromOutside.size()
                                ? fromOutside.get(i + 1).row().name() + " / "
                                        + layer.row().name()
                                : "inside surface";
                found.add(new Node(
                        name,
                        last,
                        Math.max(0, depth - share * layer.row().thicknessM()),
                        r + share * layer.resistanceM2KPerW(),
                        sd + share * sds.get(i)));
            }
            depth -= layer.row().thicknessM();
            r += layer.resistanceM2KPerW();
            sd += sds.get(i);
        }
        this.nodes = List.copyOf(found);
        this.resistance = r + assembly.insideSurface();
    }

    /** Diffusion thickness of a layer at a mean humidity. */
    static double sdM(LayerRow row, int i, double meanHumidityFraction) {
        if (row.isAir() && row.sdDryM() == null) {
            return LayerRow.STILL_AIR_SD_M;
        }
        if (row.materialId() == null && row.sdDryM() == null) {
            throw Refused.of(
                    Assembly.pointer(i) + ".sdDryM",
                    "",
                    "Layer \"" + row.name() + "\" (" + Assembly.pointer(i)
                            + ") has no vapour resistance: name a material of the library or type its diffusion"
                            + " thickness (sdDryM); for an air layer say how it is ventilated.",
                    Citations.MONTHLY);
        }
        Material material = row.material(Assembly.pointer(i));
        material.require(Assembly.pointer(i), MaterialProperty.VAPOUR_RESISTANCE);
        return Math.max(LayerRow.THINNEST_SD_M, material.diffusionThicknessM(row.thicknessM(), meanHumidityFraction));
    }

    List<Node> nodes() {
        return nodes;
    }

    /** Diffusion thickness of each layer that counts, from inside. */
    List<Double> layerSd() {
        return layerSd;
    }

    Assembly assembly() {
        return assembly;
    }

    double sdTotalM() {
        return nodes.get(nodes.size() - 1).sdM();
    }

    double resistanceM2KPerW() {
        return resistance;
    }

    /** Temperatures of all nodes. */
    double[] temperaturesC(double outdoorC, double indoorC) {
        return nodes.stream()
                .mapToDouble(n -> outdoorC + (indoorC - outdoorC) * n.resistanceM2KPerW() / resistance)
                .toArray();
    }

    /** Saturation pressures of all nodes. */
    double[] saturationPa(double outdoorC, double indoorC) {
        double[] saturation = temperaturesC(outdoorC, indoorC);
        for (int i = 0; i < saturation.length; i++) {
            saturation[i] = Iso13788Saturation.pressurePa(saturation[i]);
        }
        return saturation;
    }

    /**
     * The vapour line: the tightest string from one air to the other under the saturation line, held up to saturation
     * where water already lies. Where it touches, water condenses or evaporates (ISO 13788 clause 6.4.2).
     *
     * @param saturationPa of all nodes
     * @param wet which nodes hold water
     */
    VapourLine line(double outdoorPa, double indoorPa, double[] saturationPa, boolean[] wet) {
        int last = nodes.size() - 1;
        double[] pressure = saturationPa.clone();
        pressure[0] = outdoorPa;
        pressure[last] = indoorPa;
        List<Integer> touching = new ArrayList<>(List.of(0));
        int from = 0;
        for (int i = 1; i <= last; i++) {
            if (i == last || wet[i]) {
                string(pressure, from, i, touching);
                touching.add(i);
                from = i;
            }
        }
        return new VapourLine(nodes, touching, pressure);
    }

    /** Adds the nodes where the string between two nodes touches the saturation line, by the lower convex hull. */
    private void string(double[] pressure, int from, int to, List<Integer> touching) {
        List<Integer> hull = new ArrayList<>(List.of(from));
        for (int i = from + 1; i <= to; i++) {
            while (hull.size() > 1 && !turnsUp(pressure, hull.get(hull.size() - 2), hull.get(hull.size() - 1), i)) {
                hull.remove(hull.size() - 1);
            }
            hull.add(i);
        }
        touching.addAll(hull.subList(1, hull.size() - 1));
    }

    private boolean turnsUp(double[] pressure, int a, int b, int c) {
        double before =
                (pressure[b] - pressure[a]) * (nodes.get(c).sdM() - nodes.get(b).sdM());
        double after =
                (pressure[c] - pressure[b]) * (nodes.get(b).sdM() - nodes.get(a).sdM());
        return after > before + 1e-12 * Math.abs(before);
    }
}
