package oakum.portal.decision;

import java.util.List;
import oakum.portal.houserecord.ValueChange;
import org.jspecify.annotations.Nullable;

/** What a change reaches, for other modules. Every method asks who is calling. */
public interface Trials {
    /** The record as it is against everything that proofs and approvals relied on. */
    Reach reach(String houseId);

    /** The same with other values; saves nothing. */
    Reach trial(String houseId, Trial trial);

    /**
     * Saves tried values as new revisions and the recomputed proofs as new issues, all or nothing.
     *
     * @throws oakum.portal.http.Problem 409 {@code not-what-stands} where the record has moved since the trial
     */
    Reach take(String houseId, Taking taking);

    /** What was saved, approved and withdrawn in a house, the latest first. */
    List<ChangeEntry> history(String houseId);

    /**
     * A trial to be kept.
     *
     * @param copyCode of the trial as it was shown
     * @param decision code of the decision whose alternative this is, or null
     * @param alternative id of that alternative, or null
     */
    record Taking(
            List<ValueChange> changes,
            String reason,
            String copyCode,
            @Nullable String decision,
            @Nullable String alternative) {}
}
