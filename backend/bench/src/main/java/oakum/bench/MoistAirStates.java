package oakum.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import oakum.physics.moistair.MoistAir;

/** Humidity ratio, enthalpy and wet bulb from temperature and relative humidity: states a second on one thread. */
final class MoistAirStates {
    private static final int STATES = 1_000_000;
    private static final double PRESSURE_PA = MoistAir.STANDARD_PRESSURE_PA;

    private final double[] temperatureC = new double[STATES];
    private final double[] humidity = new double[STATES];

    private MoistAirStates() {
        int x = 123_456_789;
        for (int i = 0; i < STATES; i++) {
            x = next(x);
            temperatureC[i] = -30 + 70 * share(x);
            x = next(x);
            humidity[i] = 0.05 + 0.94 * share(x);
        }
    }

    /** The generator of the reference kernels (xorshift), so that all compute the same states. */
    private static int next(int state) {
        int x = state;
        x ^= x << 13;
        x ^= x >>> 17;
        x ^= x << 5;
        return x;
    }

    private static double share(int x) {
        return Integer.toUnsignedLong(x) / 4294967296.0;
    }

    static void go(int rounds) throws IOException {
        MoistAirStates states = new MoistAirStates();
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += states.compute();
        }
        Optional<Kernels> kernels = Kernels.find();
        boolean compiled = kernels.isPresent() && kernels.get().compile("psy/psy.c", "air");
        Path script = kernels.isPresent() ? kernels.get().source("psy/bench_psychrolib.js") : Path.of("absent");
        boolean installed = Files.isDirectory(script.resolveSibling("node_modules"));
        double[] own = new double[rounds];
        double[] c = new double[rounds];
        double[] npm = new double[rounds];
        for (int round = 0; round < rounds; round++) {
            long start = System.nanoTime();
            sum += states.compute();
            own[round] = STATES / (1e-9 * (System.nanoTime() - start));
            if (compiled) {
                String printed =
                        kernels.get().run(Map.of(), "./air").orElse("Twb (Newton 1e-7 K): states/s median NaN");
                c[round] = Kernels.after(printed, "Twb (Newton 1e-7 K): states/s median");
            }
            if (installed) {
                String printed =
                        kernels.get().run(Map.of(), "node", script.toString()).orElse("Twb states/s median NaN");
                npm[round] = Kernels.after(printed, "Twb states/s median");
            }
        }
        double median = WallYear.median(own);
        System.out.printf(
                "Moist air (humidity ratio, enthalpy, wet bulb): ours %.2f million states/s (sum %.3f)%n",
                median / 1e6, sum);
        if (compiled) {
            System.out.printf(
                    "  C: %.2f million; ratio ours / C %.2f (goal at least 0.70)%n",
                    WallYear.median(c) / 1e6, median / WallYear.median(c));
        }
        if (installed) {
            System.out.printf(
                    "  npm library: %.2f million; ratio ours / npm %.1f (goal at least 12)%n",
                    WallYear.median(npm) / 1e6, median / WallYear.median(npm));
        } else if (kernels.isPresent()) {
            System.out.println(
                    "  the npm library is not installed in the folder with reference kernels (npm ci): left out");
        }
    }

    private double compute() {
        double sum = 0;
        for (int i = 0; i < STATES; i++) {
            double w = MoistAir.humidityRatio(temperatureC[i], humidity[i], PRESSURE_PA);
            sum += w
                    + 1e-6 * MoistAir.enthalpyJPerKg(temperatureC[i], w)
                    + MoistAir.wetBulbC(temperatureC[i], w, PRESSURE_PA);
        }
        return sum / STATES;
    }
}
