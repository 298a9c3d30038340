package oakum.portal.decision;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A decision as everybody who may see the house sees it.
 *
 * @param arrows which decisions it touches, and why
 * @param copyCode stands for exactly what is shown; approving sends it back
 * @param failing what fails in the proofs behind it
 * @param version counts its changes; the entity tag
 * @param actions what the caller may do now; {@code approve-with-exception} in place of {@code approve} where a
 *     written exception is needed
 */
public record DecisionView(
        String code,
        String title,
        String question,
        String group,
        @Nullable String chosenAlternative,
        List<Alternative> alternatives,
        String reason,
        List<String> proofs,
        List<Role> approvers,
        List<String> outsideApprovers,
        boolean safetyList,
        List<String> governs,
        List<OrderLine> orders,
        List<ArrowView> arrows,
        DecisionState state,
        List<ApprovalView> approvals,
        List<RemarkView> comments,
        @Nullable LocalDate dueOn,
        String copyCode,
        List<FailingView> failing,
        long version,
        List<String> actions) {

    /**
     * What this decision touches.
     *
     * @param trigger what must change, and by how much, in words
     * @param inHouse whether the house has that decision
     */
    public record ArrowView(String to, String title, boolean hard, String because, String trigger, boolean inHouse) {}

    /** Something said about it. */
    public record RemarkView(UUID id, String person, Instant at, String text) {}

    /**
     * A failing result of a proof behind it.
     *
     * @param sentence which number of which proof, against which limit
     * @param needsException whether approving needs a written exception
     */
    public record FailingView(String sentence, boolean needsException) {}

    /**
     * One approval.
     *
     * @param reasons why it does not stand as it was given; empty where it does
     * @param exceptionReason why it was given although something failed, or null where no exception was written
     * @param failing what failed then
     * @param replaced whether the same role has approved again since
     */
    public record ApprovalView(
            UUID id,
            Role role,
            String person,
            Instant at,
            ApprovalState state,
            String copyCode,
            List<String> reasons,
            @Nullable String exceptionReason,
            List<String> failing,
            boolean alreadyBought,
            boolean alreadyBuilt,
            boolean replaced,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBy,
            @Nullable String withdrawnReason) {}
}
