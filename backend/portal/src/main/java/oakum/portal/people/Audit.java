package oakum.portal.people;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The append-only trail of who did what; the consultant's feed of changes is read from it. */
public interface Audit {
    /**
     * Writes one line in the transaction of the act itself.
     *
     * @param act kebab case: {@code part-changed}, {@code approval-given}
     * @param houseId the house concerned, or null
     * @param what one sentence with the values
     * @param resource where to read what it made or changed, such as {@code /api/v1/houses/H1/decisions/D31}, or null
     * @throws org.springframework.transaction.IllegalTransactionStateException outside of a transaction
     */
    void record(String act, @Nullable String houseId, String what, @Nullable String resource);

    /** The same, pointing at the house. */
    default void record(String act, @Nullable String houseId, String what) {
        record(act, houseId, what, houseId == null ? null : "/api/v1/houses/" + houseId);
    }

    /** Who did one kind of act at a house, how often, and when last. */
    record DoneBy(String person, int times, Instant lastAt) {}

    /**
     * Who did something at a house, the most frequent first; whoever calls it decides who may know.
     *
     * @param act kebab case: {@code readings-looked-at}
     * @param since the first instant that counts
     */
    List<DoneBy> doneBy(String act, String houseId, Instant since);
}
