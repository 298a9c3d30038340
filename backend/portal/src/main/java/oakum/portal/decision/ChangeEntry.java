package oakum.portal.decision;

import java.time.Instant;
import java.util.List;
import oakum.portal.houserecord.ValueDifference;

/**
 * One line of a house's history.
 *
 * @param key the part, the proof or the decision
 * @param number the revision or the issue; 0 for approvals
 * @param values what became another value
 * @param open whether something still rests on an older value than this change set
 */
public record ChangeEntry(
        String houseId,
        Kind kind,
        String key,
        int number,
        String title,
        String who,
        Instant when,
        String why,
        List<ValueDifference> values,
        boolean open) {

    /** What changed. */
    public enum Kind {
        PART,
        PROOF,
        APPROVAL,
        WITHDRAWAL
    }
}
