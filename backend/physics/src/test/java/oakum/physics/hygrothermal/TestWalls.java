package oakum.physics.hygrothermal;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Materials, climates and runs that several tests share. */
final class TestWalls {
    static final DoubleUnaryOperator NO_LIQUID = x -> 0;
    /** Resistivity to vapour of a material as good as tight, m s Pa/kg. */
    static final double TIGHT = 1e20;

    private TestWalls() {}

    /** A material of heat only: tight to vapour, its water a formality. */
    static LayerProperties dry(double conductivity) {
        return new TabulatedProperties.Description(h -> 1e-6 * h, h -> TIGHT, NO_LIQUID, h -> conductivity)
                .overHumidity();
    }

    static SolidLayer solid(
            String name, double thicknessM, LayerProperties properties, double volumetricHeat, double humidity) {
        double heatCapacity = volumetricHeat < 1e4 ? 100 : 1000;
        return new SolidLayer(name, thicknessM, properties, volumetricHeat / heatCapacity, heatCapacity, humidity);
    }

    static Wall wall(Face inside, Face outside, WallLayer... layers) {
        return new Wall(List.of(layers), inside, outside, List.of(), List.of());
    }

    /** A climate that does not change. */
    static Climate steady(double indoorC, double indoorPa, double outdoorC, double outdoorPa) {
        return (hour, fraction, s) -> {
            s.indoorTemperatureC = indoorC;
            s.indoorVapourPa = indoorPa;
            s.outdoorTemperatureC = outdoorC;
            s.outdoorEquivalentC = outdoorC;
            s.outdoorVapourPa = outdoorPa;
        };
    }

    static RunResult run(Wall wall, Climate climate, RunPlan plan) {
        return HygrothermalRun.of(wall, climate, plan).run(HourSink.NONE, RunControl.NONE);
    }

    /** Value at a depth, straight between cell centres. */
    static double at(RunResult.Profile profile, List<Double> values, double depthM) {
        List<Double> depth = profile.depthM();
        int i = 0;
        while (i < depth.size() - 2 && depth.get(i + 1) < depthM) {
            i++;
        }
        double share = (depthM - depth.get(i)) / (depth.get(i + 1) - depth.get(i));
        return values.get(i) + share * (values.get(i + 1) - values.get(i));
    }

    /**
     * Liquid potential over suction, by the trapezoidal rule in ln s from dry: Θ(s) = ∫ K ds from s to the driest.
     *
     * @param conductivity K over suction, s
     */
    static DoubleUnaryOperator potential(DoubleUnaryOperator conductivity) {
        int n = 20_000;
        double low = Math.log(0.5);
        double high = Math.log(2e9);
        double step = (high - low) / n;
        double[] theta = new double[n + 1];
        for (int k = n - 1; k >= 0; k--) {
            double a = Math.exp(low + k * step);
            double b = Math.exp(low + (k + 1) * step);
            double m = Math.sqrt(a * b);
            theta[k] = theta[k + 1]
                    + step
                            / 6
                            * (a * conductivity.applyAsDouble(a)
                                    + 4 * m * conductivity.applyAsDouble(m)
                                    + b * conductivity.applyAsDouble(b));
        }
        return s -> {
            double x = (Math.log(s) - low) / step;
            int k = Math.max(0, Math.min(n - 1, (int) x));
            return theta[k] + (x - k) * (theta[k + 1] - theta[k]);
        };
    }
}
