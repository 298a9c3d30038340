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
 * @param version counts its changes; the entity tag
 * @param actions what the caller may do now
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
        long version,
        List<String> actions) {

    /**
     * What this decision touches.
     *
     * @param inHouse whether the house has that decision
     */
    public record ArrowView(String to, String title, boolean hard, String because, boolean inHouse) {}

    /** Something said about it. */
    public record RemarkView(UUID id, String person, Instant at, String text) {}

    /**
     * One approval.
     *
     * @param reasons why it does not stand as it was given; empty where it does
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
            boolean alreadyBought,
            boolean alreadyBuilt,
            boolean replaced,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBy,
            @Nullable String withdrawnReason) {}
}
