package oakum.portal.simulation;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import oakum.portal.houserecord.ProofOutput;
import oakum.portal.houserecord.ValueDifference;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.job.JobState;
import org.jspecify.annotations.Nullable;

/**
 * A long run in short: what was asked, how it stands, what came of it.
 *
 * @param id of the run and of its job
 * @param calculation its id
 * @param version of the calculation that ran
 * @param comparison the runs that were asked for side by side share one; null for a run of its own
 * @param failure why it ended without an answer: where and when
 * @param partial whether it stopped before its end and the days before are kept
 * @param outputs the printed result; empty while there is none
 * @param inputsChanged what of the record it relied on is another value now
 * @param newVersion the calculation's version now where it is another, else null
 * @param revisions of each part when it was asked for, by the part's key
 * @param bindings where each input came from; a proof is kept with the same
 * @param actions what this person may do with it now: {@code cancel}, {@code keep-as-proof}
 */
record Simulation(
        UUID id,
        String house,
        String title,
        String calculation,
        String version,
        @Nullable UUID comparison,
        JobState state,
        double doneFraction,
        String step,
        @Nullable String failure,
        boolean partial,
        List<ProofOutput> outputs,
        List<ValueDifference> inputsChanged,
        @Nullable String newVersion,
        Map<String, Integer> revisions,
        List<Binding> bindings,
        String askedBy,
        Instant askedAt,
        @Nullable Instant endedAt,
        List<String> actions) {}
