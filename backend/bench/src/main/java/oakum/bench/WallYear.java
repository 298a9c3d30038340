package oakum.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oakum.physics.hygrothermal.HourSink;
import oakum.physics.hygrothermal.HygrothermalRun;
import oakum.physics.hygrothermal.RunControl;
import oakum.physics.hygrothermal.RunPlan;
import oakum.physics.hygrothermal.RunResult;
import oakum.physics.hygrothermal.Wall;

/**
 * One simulated year of the reference wall: our solver and the compiled C kernel in turns, each held against its own
 * solution with steps of a minute, so that equal error is shown and not assumed; then a general stiff solver.
 */
final class WallYear {
    /** Columns of a history: sheathing °C, sheathing humidity, cellulose's outer humidity, sheathing water kg/m². */
    private static final int[] KERNEL_COLUMNS = {4, 5, 3, 7};

    private static final int KERNEL_WIDTH = 8;
    private static final double AIR_CHANGES = 30;

    private WallYear() {}

    static void go(int rounds) throws IOException {
        SyntheticYear year = new SyntheticYear(7);
        for (int i = 0; i < 4; i++) {
            ours(year, 3600, 0.05, HourSink.NONE);
        }
        RunResult warm = ours(year, 3600, 0.05, HourSink.NONE);
        System.out.println("Reference wall, one year. Ours: " + warm.statistics());
        double[][] exact = history(year, 60, 1e-7);
        double[][] hourly = history(year, 3600, 0.05);
        System.out.println("  ours, 1 h steps against 60 s: " + errors(hourly, exact));

        Optional<Kernels> kernels = Kernels.find();
        boolean compiled = kernels.isPresent() && kernels.get().compile("ham/ham.c", "wall");
        if (compiled) {
            year.write(kernels.get().work().resolve("weather.bin"));
            kernels.get().run(Map.of("NT", "1e-7"), "./wall", "s2", "fix", "60", "1", "ref.bin");
            kernels.get().run(Map.of("NT", "5e-2", "PRED", "1"), "./wall", "s2", "fix", "3600", "1", "out.bin");
            double[][] kernelExact = read(kernels.get().work().resolve("ref.bin"));
            System.out.println("  C kernel, 1 h steps against 60 s: "
                    + errors(read(kernels.get().work().resolve("out.bin")), kernelExact));
            System.out.println("  ours against the C kernel, both with 60 s: " + errors(exact, kernelExact));
        }
        double[] own = new double[rounds];
        double[] kernel = new double[rounds];
        for (int round = 0; round < rounds; round++) {
            own[round] = timed(year);
            if (compiled) {
                String printed = kernels.get()
                        .run(Map.of("NT", "5e-2", "PRED", "1"), "./wall", "s2", "fix", "3600", "3", "out.bin")
                        .orElse("median NaN");
                kernel[round] = Kernels.after(printed, "median");
                System.out.printf("  round %d: ours %.3f s, C %.3f s%n", round + 1, own[round], kernel[round]);
            }
        }
        double ownMedian = median(own);
        System.out.printf(
                "  ours: median %.3f s a year, %.0f ns per cell and iteration%n",
                ownMedian,
                ownMedian
                        * 1e9
                        / warm.statistics().iterations()
                        / warm.statistics().cells());
        if (compiled) {
            System.out.printf("  ratio ours / C: %.2f (goal at most 1.3)%n", ownMedian / median(kernel));
            stiff(kernels.get(), ownMedian);
        }
    }

    /** The same wall by a general solver for stiff equations, ten days of it, carried over to a year. */
    private static void stiff(Kernels kernels, double ownS) throws IOException {
        String python = System.getProperty("python", "python3");
        try {
            Optional<String> printed = kernels.run(
                    Map.of(), python, kernels.source("ham/ham_scipy.py").toString(), "10", "BDF", "1e-3");
            if (printed.isPresent()) {
                double yearS = Kernels.after(printed.get(), "-> ");
                System.out.printf(
                        "  general stiff solver: %.0f s a year (from ten days); ratio to ours %.0f (goal at least 120)%n",
                        yearS, yearS / ownS);
            }
        } catch (IOException e) {
            System.out.println("  no Python here: " + e.getMessage());
        }
    }

    private static RunResult ours(SyntheticYear year, double stepS, double newtonK, HourSink sink) {
        return HygrothermalRun.onGrid(
                        ReferenceWall.wall(1),
                        year.climate(AIR_CHANGES),
                        RunPlan.hours(SyntheticYear.HOURS).withSteps(stepS, 1, newtonK),
                        ReferenceWall.grid(1))
                .run(sink, RunControl.NONE);
    }

    private static double timed(SyntheticYear year) {
        double[] seconds = new double[3];
        for (int k = 0; k < seconds.length; k++) {
            long start = System.nanoTime();
            ours(year, 3600, 0.05, HourSink.NONE);
            seconds[k] = 1e-9 * (System.nanoTime() - start);
        }
        return median(seconds);
    }

    private static double[][] history(SyntheticYear year, double stepS, double newtonK) {
        double[][] rows = new double[SyntheticYear.HOURS][];
        ours(
                year,
                stepS,
                newtonK,
                hour -> rows[hour.hour() - 1] = new double[] {
                    hour.planeTemperatureC(1),
                    hour.planeHumidity(1),
                    hour.planeHumidity(0),
                    hour.layerWaterKgPerM3(ReferenceWall.SHEATHING) * 0.012
                });
        return rows;
    }

    private static double[][] read(Path file) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        double[][] rows = new double[SyntheticYear.HOURS][];
        for (int hour = 0; hour < rows.length; hour++) {
            int at = hour + 1;
            rows[hour] = Arrays.stream(KERNEL_COLUMNS)
                    .mapToDouble(column -> bytes.getFloat(Float.BYTES * (at * KERNEL_WIDTH + column)))
                    .toArray();
        }
        return rows;
    }

    private static String errors(double[][] found, double[][] exact) {
        double[] most = new double[4];
        double squares = 0;
        for (int hour = 0; hour < found.length; hour++) {
            for (int k = 0; k < 4; k++) {
                double error = Math.abs(found[hour][k] - exact[hour][k]);
                most[k] = Math.max(most[k], k == 3 ? error / exact[hour][k] : error);
            }
            squares += Math.pow(found[hour][0] - exact[hour][0], 2);
        }
        return String.format(
                "sheathing rms %.3f K, most %.3f K; humidity most %.3f %%-points; cellulose's outer humidity %.3f"
                        + " %%-points; sheathing water %.3f %%",
                Math.sqrt(squares / found.length), most[0], 100 * most[1], 100 * most[2], 100 * most[3]);
    }

    static double median(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** A wall of the sweep: the reference wall with its insulation and retarder scaled. */
    static RunResult variant(SyntheticYear year, double scale, double airChanges, int hours, RunControl control) {
        Wall wall = ReferenceWall.wall(scale);
        List<double[]> grid = ReferenceWall.grid(scale);
        return HygrothermalRun.onGrid(wall, year.climate(airChanges), RunPlan.hours(hours), grid)
                .run(HourSink.NONE, control);
    }
}
