package oakum.portal.commissioning;

import java.util.List;
import oakum.physics.numerics.StudentT;

/** Three or more readings of one thing: their mean and how far it can be trusted; pure. */
final class Readings {
    private static final double PROBABILITY = 0.975;

    private Readings() {}

    static double mean(List<Double> readings) {
        return readings.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    /**
     * Half the width of the 95 % interval of the mean from scatter alone: t·s/√N (GUM, JCGM 100:2008, 4.2.3 and G.3).
     *
     * @param readings at least two
     */
    static double scatter(List<Double> readings) {
        int count = readings.size();
        double mean = mean(readings);
        double squares =
                readings.stream().mapToDouble(r -> (r - mean) * (r - mean)).sum();
        return StudentT.quantile(PROBABILITY, count - 1) * Math.sqrt(squares / (count - 1) / count);
    }
}
