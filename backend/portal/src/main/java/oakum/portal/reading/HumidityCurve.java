package oakum.portal.reading;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The most indoor humidity at each outdoor temperature, as the house record has it: straight between its points. Beyond
 * the outermost two it says nothing: what holds in deep cold is no rule for a summer, nor for colder days.
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
     * @return the greatest relative humidity as a fraction, or null beyond the curve
     */
    @Nullable
    Double at(double outdoorC) {
        Map.Entry<Double, Double> colder = points.floorEntry(outdoorC);
        Map.Entry<Double, Double> warmer = points.ceilingEntry(outdoorC);
        if (colder == null || warmer == null) {
            return null;
        }
        if (colder.getKey().equals(warmer.getKey())) {
            return colder.getValue();
        }
        double share = (outdoorC - colder.getKey()) / (warmer.getKey() - colder.getKey());
        return colder.getValue() + share * (warmer.getValue() - colder.getValue());
    }
}
