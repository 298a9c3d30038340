package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Resistance of layers that framing bridges, between two limits (ISO 6946 clause 6.7.2): heat runs straight through, or
 * each layer's faces are of one temperature.
 *
 * @param upperM2KPerW R', full paths from surface to surface
 * @param lowerM2KPerW R'', layer by layer
 */
record CombinedMethod(double upperM2KPerW, double lowerM2KPerW) {
    /** More independent layers of framing than any wall has; each doubles the number of paths. */
    static final int MOST_FRAMED_GROUPS = 10;

    double meanM2KPerW() {
        return (upperM2KPerW + lowerM2KPerW) / 2;
    }

    /** Greatest relative error of the mean. */
    double errorFraction() {
        return (upperM2KPerW - lowerM2KPerW) / (2 * meanM2KPerW());
    }

    double ratio() {
        return upperM2KPerW / lowerM2KPerW;
    }

    /**
     * @param groups layers by the framing that stands one on the other; layers of different groups cross
     * @param surfacesM2KPerW both surfaces together
     */
    static CombinedMethod of(List<List<ThermalLayer>> groups, double surfacesM2KPerW) {
        List<double[]> paths = List.of(new double[] {1, surfacesM2KPerW});
        double lower = surfacesM2KPerW;
        for (List<ThermalLayer> group : groups) {
            List<double[]> next = new ArrayList<>();
            for (double[] own : pathsThrough(group)) {
                for (double[] path : paths) {
                    next.add(new double[] {path[0] * own[0], path[1] + own[1]});
                }
            }
            paths = next;
            for (ThermalLayer layer : group) {
                lower += alone(layer);
            }
        }
        double upper = 1 / paths.stream().mapToDouble(path -> path[0] / path[1]).sum();
        return new CombinedMethod(upper, lower);
    }

    /** Groups layers by the framing that stands one on the other; unframed layers share one group without paths. */
    static List<List<ThermalLayer>> groups(List<ThermalLayer> layers) {
        Map<String, List<ThermalLayer>> groups = new LinkedHashMap<>();
        Map<String, String> groupOf = new LinkedHashMap<>();
        for (ThermalLayer layer : layers) {
            String on = layer.row().framingOnId();
            String key = layer.framingFraction() == 0
                    ? ""
                    : on != null && groupOf.containsKey(on)
                            ? groupOf.get(on)
                            : layer.row().id();
            groupOf.put(layer.row().id(), key);
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(layer);
        }
        return List.copyOf(groups.values());
    }

    private static double alone(ThermalLayer layer) {
        double framing = layer.framingFraction();
        return framing == 0
                ? layer.resistanceM2KPerW()
                : 1 / ((1 - framing) / layer.resistanceM2KPerW() + framing / layer.framingResistanceM2KPerW());
    }

    /** Shares of the area and resistances through one group: the narrower framing lies within the wider one. */
    private static List<double[]> pathsThrough(List<ThermalLayer> group) {
        List<Double> edges = new ArrayList<>(List.of(0.0, 1.0));
        group.forEach(layer -> edges.add(layer.framingFraction()));
        List<Double> sorted = edges.stream().distinct().sorted().toList();
        List<double[]> paths = new ArrayList<>();
        for (int i = 1; i < sorted.size(); i++) {
            double to = sorted.get(i);
            double resistance = group.stream()
                    .mapToDouble(layer -> layer.framingFraction() >= to
                            ? layer.framingResistanceM2KPerW()
                            : layer.resistanceM2KPerW())
                    .sum();
            paths.add(new double[] {to - sorted.get(i - 1), resistance});
        }
        return paths;
    }
}
