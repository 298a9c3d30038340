package oakum.portal.houserecord;

import java.time.Instant;
import java.util.List;

/**
 * One saved change of the record: a revision of a part or an issue of a proof.
 *
 * @param kind PART or PROOF
 * @param key the part's or the proof's key
 * @param number the revision or the issue
 * @param title as people read it
 * @param values what became another value; empty for issues
 */
public record RecordChange(
        Kind kind,
        String key,
        int number,
        String title,
        String who,
        Instant when,
        String why,
        List<ValueDifference> values) {

    /** What changed. */
    public enum Kind {
        PART,
        PROOF
    }
}
