package oakum.portal.reading;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The most indoor humidity at each outdoor temperature, as the house record has it: straight between its points, level
 * beyond the outermost two.
 */
final class HumidityCurve {
    private final NavigableMap<Double, Double> points;

    /** @param points relative humidity as a fraction by outdoor temperature in °C; one or more */
    HumidityCurve(Map<Double, Double> points) {
        this.points = new TreeMap<>(points);
    }

    /**
     * The limit at an outdoor temperature.
     *
     * @param outdoorC the outdoor temperature in °C
     * @return the greatest relative humidity as a fraction
     */
    double at(double outdoorC) {
        Map.Entry<Double, Double> colder = points.floorEntry(outdoorC);
        Map.Entry<Double, Double> warmer = points.ceilingEntry(outdoorC);
        if (colder == null || warmer == null || colder.getKey().equals(warmer.getKey())) {
            Map.Entry<Double, Double> nearest = colder == null ? warmer : colder;
            return value(nearest);
        }
        double share = (outdoorC - colder.getKey()) / (warmer.getKey() - colder.getKey());
        return value(colder) + share * (value(warmer) - value(colder));
    }

    private static double value(Map.@Nullable Entry<Double, Double> point) {
        if (point == null) {
            throw new IllegalStateException("a curve has one point or more");
        }
        return point.getValue();
    }
}
