package oakum.physics.hygrothermal;

import java.util.List;

/**
 * A membrane or coating: a resistance to vapour without thickness, storage or thermal resistance, tight to liquid.
 * Between its points log s_d runs linearly with the mean relative humidity of both faces, outside them s_d stands still.
 *
 * @param name as people call it
 * @param points s_d over the mean relative humidity of both faces, humidity rising; one point for a constant s_d
 */
public record MembraneLayer(String name, List<Point> points) implements WallLayer {
    /**
     * One tested point.
     *
     * @param meanHumidityFraction 0 to 1
     * @param sdM thickness of still air with the same resistance, 0.001 to 10000
     */
    public record Point(double meanHumidityFraction, double sdM) {}

    public MembraneLayer {
        points = List.copyOf(points);
    }

    /** A membrane whose s_d does not depend on humidity. */
    public static MembraneLayer constant(String name, double sdM) {
        return new MembraneLayer(name, List.of(new Point(0.5, sdM)));
    }

    /** s_d at a mean relative humidity of both faces, m. */
    public double sdM(double meanHumidityFraction) {
        int last = points.size() - 1;
        if (meanHumidityFraction <= points.get(0).meanHumidityFraction()) {
            return points.get(0).sdM();
        }
        for (int i = 0; i < last; i++) {
            if (meanHumidityFraction <= points.get(i + 1).meanHumidityFraction()) {
                return points.get(i).sdM()
                        * Math.exp(logSlope(i)
                                * (meanHumidityFraction - points.get(i).meanHumidityFraction()));
            }
        }
        return points.get(last).sdM();
    }

    /** Slope of ln s_d with the mean relative humidity. */
    double logSlopeAt(double meanHumidityFraction) {
        for (int i = 0; i < points.size() - 1; i++) {
            if (meanHumidityFraction > points.get(i).meanHumidityFraction()
                    && meanHumidityFraction <= points.get(i + 1).meanHumidityFraction()) {
                return logSlope(i);
            }
        }
        return 0;
    }

    private double logSlope(int i) {
        Point a = points.get(i);
        Point b = points.get(i + 1);
        return Math.log(b.sdM() / a.sdM()) / (b.meanHumidityFraction() - a.meanHumidityFraction());
    }
}
