package oakum.physics.envelope;

import static oakum.physics.material.Material.AIR_PERMEABILITY_KG_PER_M_S_PA;

import java.util.List;

/** A steady vapour line through an assembly: straight between the nodes it touches. */
final class VapourLine {
    private final List<VapourPath.Node> nodes;
    private final List<Integer> touching;
    private final double[] pressurePa;

    /**
     * @param touching nodes at which the line may bend, both surfaces among them, in order
     * @param pressurePa at those nodes; of no meaning at the others
     */
    VapourLine(List<VapourPath.Node> nodes, List<Integer> touching, double[] pressurePa) {
        this.nodes = nodes;
        this.touching = touching;
        this.pressurePa = pressurePa;
    }

    /** The nodes at which water condenses or evaporates. */
    List<Integer> planes() {
        return touching.subList(1, touching.size() - 1);
    }

    /** What condenses at the k-th plane, kg/(m² s); below 0 what evaporates. */
    double rateKgPerSM2(int k) {
        int outer = touching.get(k);
        int plane = touching.get(k + 1);
        int inner = touching.get(k + 2);
        return AIR_PERMEABILITY_KG_PER_M_S_PA * (slope(plane, inner) - slope(outer, plane));
    }

    private double slope(int from, int to) {
        return (pressurePa[to] - pressurePa[from])
                / (nodes.get(to).sdM() - nodes.get(from).sdM());
    }

    /** Vapour pressure at every node. */
    double[] pressuresPa() {
        double[] all = pressurePa.clone();
        for (int k = 1; k < touching.size(); k++) {
            int from = touching.get(k - 1);
            int to = touching.get(k);
            double slope = slope(from, to);
            for (int i = from + 1; i < to; i++) {
                all[i] = pressurePa[from]
                        + slope * (nodes.get(i).sdM() - nodes.get(from).sdM());
            }
        }
        return all;
    }
}
