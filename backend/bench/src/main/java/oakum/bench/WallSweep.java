package oakum.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import oakum.physics.hygrothermal.RunControl;
import oakum.physics.hygrothermal.RunResult;

/** A hundred variants of the reference wall for a year on two threads, and the memory of one run of five years. */
final class WallSweep {
    private static final int WALLS = 100;
    private static final int THREADS = 2;

    private WallSweep() {}

    static void go() throws InterruptedException, ExecutionException {
        SyntheticYear year = new SyntheticYear(7);
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        long start = System.nanoTime();
        List<Future<RunResult>> runs = new ArrayList<>();
        for (int k = 0; k < WALLS; k++) {
            double scale = 0.5 + k / (double) WALLS;
            double airChanges = 1 + k;
            runs.add(threads.submit(
                    () -> WallYear.variant(year, scale, airChanges, SyntheticYear.HOURS, RunControl.NONE)));
        }
        int finished = 0;
        double worst = 0;
        for (Future<RunResult> run : runs) {
            RunResult result = run.get();
            finished += result.outcome() == RunResult.Outcome.FINISHED ? 1 : 0;
            worst = Math.max(worst, result.balance().waterErrorOfThroughput());
        }
        threads.shutdown();
        System.out.printf(
                "%d walls for a year on %d threads: %.1f s (goal at most 25); %d finished, water closed to %.0e%n",
                WALLS, THREADS, 1e-9 * (System.nanoTime() - start), finished, worst);
    }

    static void memory() {
        SyntheticYear year = new SyntheticYear(7);
        int hours = 5 * SyntheticYear.HOURS;
        WallYear.variant(year, 1, 30, 24, RunControl.NONE);
        double before = usedMb();
        double[] most = new double[1];
        WallYear.variant(year, 1, 30, hours, (done, of) -> {
            if (done % (365 * 24) == 0 || done == of - 24) {
                most[0] = Math.max(most[0], usedMb() - before);
            }
            return true;
        });
        System.out.printf("Memory held by a running five-year simulation: %.1f MB (goal under 20)%n", most[0]);
    }

    private static double usedMb() {
        Runtime runtime = Runtime.getRuntime();
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return (runtime.totalMemory() - runtime.freeMemory()) / 1e6;
    }
}
