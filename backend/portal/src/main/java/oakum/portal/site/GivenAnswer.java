package oakum.portal.site;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One answer that somebody gave to a row. Answers are kept for ever; which one counts is derived.
 *
 * @param round 1 for the first look, one more for every look that knew of an earlier answer
 * @param answer the key that was pressed
 * @param judged what counts: a number beyond its limit is not right whatever was pressed
 * @param takenAt when the device says it was given
 * @param receivedAt when it reached the portal
 */
record GivenAnswer(
        UUID id,
        String rowId,
        int round,
        RowAnswer answer,
        RowAnswer judged,
        @Nullable Double value,
        String note,
        @Nullable UUID repeatOf,
        Instant takenAt,
        Instant receivedAt,
        UUID personId,
        String person,
        List<UUID> photos,
        @Nullable Acceptance acceptance) {

    /** The principal lets it pass as it is. */
    record Acceptance(String reason, String person, Instant at) {}

    /** A device whose clock runs ahead cannot answer later than its answer arrived. */
    Instant at() {
        return takenAt.isBefore(receivedAt) ? takenAt : receivedAt;
    }

    /** The answer that counts: of the latest round the earliest; empty where nobody answered. */
    static Optional<GivenAnswer> counting(List<GivenAnswer> answersOfOneRow) {
        return answersOfOneRow.stream()
                .min(Comparator.comparingInt((GivenAnswer answer) -> -answer.round())
                        .thenComparing(GivenAnswer::at)
                        .thenComparing(GivenAnswer::receivedAt)
                        .thenComparing(GivenAnswer::id));
    }

    /** Whether others answered in the same round and judged otherwise. */
    boolean contradictedIn(List<GivenAnswer> answersOfOneRow) {
        return answersOfOneRow.stream().anyMatch(other -> other.round() == round && other.judged() != judged);
    }
}
