package oakum.portal.decision;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import oakum.portal.houserecord.standing.Relied;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * Somebody's approval of exactly what was shown.
 *
 * @param exceptionReason why it was given although proofs failed, or null where no exception was written
 * @param failing what failed then, whole sentences
 */
record Approval(
        UUID id,
        String code,
        Role role,
        UUID personId,
        String person,
        Instant at,
        String copyCode,
        Content approved,
        @Nullable String exceptionReason,
        List<String> failing,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBy,
        @Nullable String withdrawnReason) {

    /**
     * What was approved.
     *
     * @param chosen the chosen alternative, or null
     * @param proofs each proof behind the decision as it was
     * @param governed the values that the decision settles
     * @param neighbours what the sources of its arrows were: decision code or path to their state
     */
    record Content(
            @Nullable String chosen,
            Map<String, ApprovedProof> proofs,
            Map<String, String> governed,
            Map<String, Neighbour> neighbours) {}

    /** One proof as it was approved. */
    record ApprovedProof(
            int issue,
            String copyCode,
            String version,
            List<Relied> relied,
            Map<String, String> inputs,
            Map<String, String> outputs) {}

    /** A neighbour as it was when this was approved. */
    record Neighbour(@Nullable String chosen, Map<String, String> values) {}
}
