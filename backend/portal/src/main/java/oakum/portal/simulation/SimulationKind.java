package oakum.portal.simulation;

import java.util.Map;
import oakum.physics.calculation.Refused;
import oakum.portal.job.JobFailed;
import oakum.portal.job.JobKind;
import oakum.portal.job.JobWork;

/** Runs one calculation as a job; the kind of the job is the calculation's id. */
abstract class SimulationKind implements JobKind {
    private final SimulationRows rows;

    SimulationKind(SimulationRows rows) {
        this.rows = rows;
    }

    /** Hears how far a run is and says whether to go on. */
    @FunctionalInterface
    interface Progress {
        boolean goOn(double fraction, String step);
    }

    /**
     * Refuses what cannot be run, before it is kept as asked for.
     *
     * @param inputs pointer to canonical text
     * @throws Refused naming field, value and range
     */
    abstract void check(Map<String, String> inputs);

    /** Runs to the end, or until it cannot go on or need not. */
    abstract Simulated simulate(Map<String, String> inputs, Progress progress);

    @Override
    public final String run(JobWork work) {
        SimulationRows.Run asked =
                rows.find(work.id()).orElseThrow(() -> new JobFailed("What was asked for is not there."));
        Simulated done;
        try {
            done = simulate(asked.inputs(), work::goOn);
        } catch (Refused refused) {
            throw new JobFailed(String.valueOf(refused.getMessage()));
        }
        if (!done.cancelled()) {
            rows.keep(asked, done);
        }
        if (done.stopped() != null) {
            throw new JobFailed(done.stopped());
        }
        return "{}";
    }
}
