package oakum.physics.hygrothermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import oakum.physics.moistair.Iso13788Saturation;

/** Walls and years drawn at random, sensible ones and poor ones: each seed always gives the same. */
final class RandomWalls {
    private RandomWalls() {}

    static Wall wall(long seed) {
        Random random = new Random(seed * 31 + 7);
        List<WallLayer> layers = new ArrayList<>();
        double humidity = between(random, 0.3, 0.95);
        layers.add(wood(random, "lining", between(random, 0.009, 0.02), 700, 400, humidity));
        if (random.nextInt(4) > 0) {
            layers.add(
                    random.nextBoolean()
                            ? MembraneLayer.constant("retarder", logBetween(random, 0.1, 100))
                            : new MembraneLayer(
                                    "smart retarder",
                                    List.of(
                                            new MembraneLayer.Point(0.25, 4),
                                            new MembraneLayer.Point(0.5, 2),
                                            new MembraneLayer.Point(0.725, 0.3),
                                            new MembraneLayer.Point(0.95, 0.1))));
        }
        double thickness = between(random, 0.08, 0.45);
        layers.add(
                random.nextBoolean()
                        ? fibre("cellulose", thickness, 60, 350, 0.13, humidity)
                        : fibre("mineral wool", thickness, 40, 50, 0.0025, humidity));
        layers.add(wood(random, "sheathing", between(random, 0.009, 0.03), 600, 470, humidity));
        if (random.nextBoolean()) {
            layers.add(MembraneLayer.constant("outer membrane", logBetween(random, 0.02, 2)));
        }
        if (random.nextInt(3) > 0) {
            layers.add(new AirLayer("cavity", between(random, 0.01, 0.05), 8, 5e-8, true, humidity));
        }
        layers.add(wood(random, "cladding", between(random, 0.012, 0.1), 450, 450, humidity));
        int sheathing = 0;
        while (!layers.get(sheathing).name().equals("sheathing")) {
            sheathing++;
        }
        List<MoistureSource> sources = new ArrayList<>();
        if (random.nextInt(3) == 0) {
            sources.add(new MoistureSource(
                    MoistureSource.Kind.RAIN,
                    sheathing,
                    MoistureSource.Side.OUTER,
                    0.005,
                    between(random, 0.002, 0.05)));
        }
        if (random.nextInt(3) == 0) {
            sources.add(
                    new MoistureSource(MoistureSource.Kind.AIR_LEAK, sheathing, MoistureSource.Side.INNER, 0.005, 1));
        }
        return new Wall(
                layers,
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-7),
                List.of(
                        new Plane("sheathing, inner face", sheathing, 0),
                        new Plane("sheathing, outer face", sheathing, 0.009)),
                sources);
    }

    /** A wood-like board: sorption in kinks, resistance to vapour falling with humidity, liquid by absorption. */
    static SolidLayer wood(Random random, String name, double thickness, double density, double full, double humidity) {
        double absorption = logBetween(random, 0.001, 0.02);
        double dryMu = logBetween(random, 10, 250);
        double wetMu = dryMu * between(random, 0.1, 0.9);
        double[] h = {0, 0.1, 0.3, 0.5, 0.65, 0.8, 0.9, 0.95, 1};
        double[] percent = {0, 2, 5, 7, 9.5, 13.5, 18, 22, 100 * full / density};
        LayerProperties p = new TabulatedProperties.Description(
                        x -> 0.01 * density * line(h, percent, x),
                        x -> Math.exp(Math.log(dryMu)
                                        + Math.log(wetMu / dryMu) * Math.max(0, Math.min(1, (x - 0.25) / 0.7)))
                                / 2e-10,
                        x -> {
                            double w = 0.01 * density * line(h, percent, x);
                            double atFull = 3.8 * absorption * absorption / (full * full);
                            return atFull * full / Math.log(1000) * (Math.pow(1000, w / full - 1) - 0.001);
                        },
                        x -> 0.12 + 0.0003 * density * 0.01 * line(h, percent, x))
                .overHumidity();
        return new SolidLayer(name, thickness, p, density, 1600, humidity);
    }

    private static SolidLayer fibre(
            String name, double thickness, double density, double full, double atEighty, double humidity) {
        double[] h = {0, 0.5, 0.8, 0.95, 1};
        double[] water = {0, density * atEighty * 0.55, density * atEighty, density * atEighty * 1.7, full};
        LayerProperties p = new TabulatedProperties.Description(
                        x -> line(h, water, x), x -> 1.5 / 2e-10, TestWalls.NO_LIQUID, x -> 0.038)
                .conductivityGrowingPerK(0.004)
                .overHumidity();
        return new SolidLayer(name, thickness, p, density, 1600, humidity);
    }

    static double line(double[] x, double[] y, double at) {
        for (int i = 1; i < x.length; i++) {
            if (at <= x[i]) {
                return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
            }
        }
        return y[y.length - 1];
    }

    /** A cold year with sun on the wall, rain above freezing, and an indoor humidity of its own. */
    static Climate climate(long seed) {
        Random random = new Random(seed * 17 + 3);
        double mean = between(random, -2, 14);
        double swing = between(random, 8, 18);
        double indoorHumidity = between(random, 0.25, 0.7);
        double rain = between(random, 0.02, 0.4);
        double airChanges = logBetween(random, 1, 300);
        double leak = logBetween(random, 1e-7, 2e-5);
        return new HourlyClimate((hour, s) -> {
            Random noise = new Random(seed * 1_000_003 + hour / 6);
            double year = -Math.cos(2 * Math.PI * (hour - 480) / 8760.0);
            double day = Math.sin(2 * Math.PI * (hour % 24 - 9) / 24.0);
            s.outdoorTemperatureC = mean + swing * year + 4 * day + 4 * noise.nextGaussian();
            double sun = Math.max(0, Math.sin(Math.PI * (hour % 24 - 6) / 12.0)) * 500 * noise.nextDouble();
            s.outdoorEquivalentC = s.outdoorTemperatureC + 0.6 * sun / 17 - (sun == 0 ? 2 : 0);
            s.outdoorVapourPa =
                    Math.min(1, 0.6 + 0.4 * noise.nextDouble()) * Iso13788Saturation.pressurePa(s.outdoorTemperatureC);
            s.rainKgPerM2S = noise.nextInt(15) == 0 && s.outdoorTemperatureC > 0 ? rain * noise.nextDouble() / 900 : 0;
            s.indoorTemperatureC = 21;
            s.indoorVapourPa = indoorHumidity * Iso13788Saturation.pressurePa(21);
            s.cavityAirChangesPerHour = airChanges * (0.5 + noise.nextDouble());
            s.leakM3PerM2S = Math.max(0, 21 - s.outdoorTemperatureC) / 30 * leak;
        });
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static double logBetween(Random random, double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }
}
