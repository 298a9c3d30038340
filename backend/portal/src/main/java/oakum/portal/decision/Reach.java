package oakum.portal.decision;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import oakum.physics.calculation.Verdict;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.ValueDifference;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * What a change reaches: the record as it is, or as it would be in a trial, against everything that proofs and approvals
 * relied on.
 *
 * @param title of the trial; empty for the record as it is
 * @param changedValues what is another value than somebody relied on
 * @param chain every proof whose inputs or result differ, from the top down
 * @param moved the decisions to which the changed values belong
 * @param askedNow whom the change asks first
 * @param askedLater who waits until one of these is settled
 * @param quiet arrows whose source moved too little to ask anybody
 * @param orders order lines of every decision concerned
 * @param copyCode stands for this very result; taking a trial sends it back
 * @param computedInS how long it took
 * @param actions what the caller may do now
 */
public record Reach(
        String houseId,
        String title,
        List<ChangedValue> changedValues,
        List<ChainLink> chain,
        List<MovedDecision> moved,
        List<ReachedDecision> askedNow,
        List<ReachedDecision> askedLater,
        List<QuietArrow> quiet,
        List<ReachedOrder> orders,
        String copyCode,
        double computedInS,
        List<String> actions) {

    /**
     * One value that is another one now.
     *
     * @param old what was relied on, as canonical text, or null where there was nothing
     * @param present what stands there now, or in the trial
     * @param who gave it its present value; null for a value of the trial
     */
    public record ChangedValue(
            String path,
            String label,
            FieldJson.@Nullable UnitJson unit,
            @Nullable String old,
            @JsonProperty("new") @Nullable String present,
            @Nullable String who,
            @Nullable Instant when,
            @Nullable String reason) {}

    /**
     * One proof along the chain.
     *
     * @param issue the issue that the old numbers come from
     * @param state how the latest issue stands against the record (or the trial)
     * @param inputs which of its inputs differ
     * @param outputs its leading numbers and every number with a limit, old and new
     * @param refusal why it cannot be recomputed, or null
     * @param decisions the decisions that rest on it
     */
    public record ChainLink(
            String proofKey,
            String title,
            int issue,
            @Nullable String calculation,
            ProofState state,
            List<ValueDifference> inputs,
            List<ChainOutput> outputs,
            @Nullable String refusal,
            List<String> decisions) {}

    /** One number of a proof, as it was relied on or approved, and as it comes out now. */
    public record ChainOutput(
            String name,
            String label,
            String symbol,
            FieldJson.@Nullable UnitJson unit,
            @Nullable String old,
            @JsonProperty("new") @Nullable String present,
            @Nullable String limit,
            @Nullable Verdict oldVerdict,
            @Nullable Verdict verdict,
            boolean leading) {}

    /** A decision whose own values are others than its neighbours or its approvers knew. */
    public record MovedDecision(String code, String title) {}

    /** What becomes of a decision that a change reaches. */
    public enum Fate {
        LAPSED,
        FRESH_LOOK,
        /** Nothing yet: it is asked when something before it is settled. */
        WAITING
    }

    /**
     * A decision that the change reaches.
     *
     * @param asked the roles whose approval it needs
     * @param because whole reasons, from the proofs and from the neighbours
     * @param when code of the decision that must be settled first; null for those asked now
     * @param again whether it is asked now, too
     */
    public record ReachedDecision(
            String code,
            String title,
            Fate state,
            boolean safetyList,
            List<Role> asked,
            List<String> outside,
            List<String> because,
            @Nullable String when,
            boolean again,
            boolean alreadyBought,
            boolean alreadyBuilt,
            @Nullable LocalDate dueOn) {}

    /**
     * An arrow that stayed quiet.
     *
     * @param from code of the decision that moved, or the path of the value
     * @param to code of the decision that it would have asked
     * @param title of that decision
     * @param sentence why it is touched, and the band that the change stayed within
     */
    public record QuietArrow(String from, String to, String title, String sentence) {}

    /** An order line of a decision that the change reaches. */
    public record ReachedOrder(String decision, String id, String title, OrderLine.State state, String note) {}
}
