package oakum.portal.site;

import java.util.Collection;
import java.util.List;
import oakum.portal.decision.ApprovalState;
import oakum.portal.decision.DecisionView;
import oakum.portal.decision.Decisions;
import org.springframework.stereotype.Component;

/** Reads from the decisions of the house which approvals behind site work no longer stand. */
@Component
class DecisionsBehind implements ApprovalsBehind {
    private final Decisions decisions;

    DecisionsBehind(Decisions decisions) {
        this.decisions = decisions;
    }

    @Override
    public List<LapsedApproval> lapsed(String houseId, Collection<String> decisionCodes) {
        return decisions.list(houseId).stream()
                .filter(decision -> decisionCodes.contains(decision.code()))
                .flatMap(decision -> decision.approvals().stream()
                        .filter(DecisionsBehind::lapsed)
                        .limit(1)
                        .map(approval -> new LapsedApproval(decision.code(), decision.title(), because(approval))))
                .toList();
    }

    private static boolean lapsed(DecisionView.ApprovalView approval) {
        return !approval.replaced()
                && (approval.state() == ApprovalState.LAPSED || approval.state() == ApprovalState.WITHDRAWN);
    }

    private static String because(DecisionView.ApprovalView approval) {
        return approval.state() == ApprovalState.WITHDRAWN
                ? "withdrawn by " + approval.withdrawnBy() + ": " + approval.withdrawnReason()
                : String.join("; ", approval.reasons());
    }
}
