package oakum.portal.decision;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import oakum.portal.houserecord.standing.Issue;
import oakum.portal.houserecord.standing.Relied;
import oakum.portal.houserecord.standing.Standing;
import org.jspecify.annotations.Nullable;

/**
 * Whether an approval still stands: a pure function of what was approved and of how things are.
 *
 * @param reasons why it does not stand as it was given; empty where it does
 */
record ApprovalStanding(ApprovalState state, List<Reason> reasons) {

    /**
     * One reason.
     *
     * @param weight what it makes of the approval
     * @param cause what kind of reason it is
     * @param source the proof, path or decision it comes from
     * @param sentence in words
     * @param through proofs through whose results alone it comes; empty where a value itself changed
     */
    record Reason(ApprovalState weight, Cause cause, String source, String sentence, Set<String> through) {}

    /** Where a reason comes from. */
    enum Cause {
        /** The decision itself says another thing now. */
        OWN,
        PROOF,
        NEIGHBOUR
    }

    static ApprovalStanding of(Approval approval, DecisionContent decision, Facts now) {
        if (approval.withdrawnAt() != null) {
            return new ApprovalStanding(ApprovalState.WITHDRAWN, List.of());
        }
        Approval.Content approved = approval.approved();
        List<Reason> reasons = new ArrayList<>();
        own(approved, decision, now, reasons);
        approved.proofs().forEach((key, proof) -> {
            Reason reason = decision.proofs().contains(key) ? proof(key, proof, decision, now) : null;
            if (reason != null) {
                reasons.add(reason);
            }
        });
        neighbours(approval.code(), approved, now, reasons);
        ApprovalState worst = reasons.stream()
                .map(Reason::weight)
                .max(ApprovalState::compareTo)
                .orElse(ApprovalState.STANDS);
        return new ApprovalStanding(worst, reasons);
    }

    private static void own(Approval.Content approved, DecisionContent decision, Facts now, List<Reason> reasons) {
        if (!Objects.equals(approved.chosen(), decision.chosenAlternative())) {
            reasons.add(lapsed("", "another alternative is chosen"));
        }
        if (!approved.proofs().keySet().equals(new LinkedHashSet<>(decision.proofs()))) {
            reasons.add(lapsed("", "it rests on other proofs now"));
        }
        for (String path : changed(approved.governed(), now.under(decision.governedPaths()))) {
            reasons.add(lapsed(path, "what it settled has changed"));
        }
    }

    private static Reason lapsed(String source, String sentence) {
        return new Reason(ApprovalState.LAPSED, Cause.OWN, source, sentence, Set.of());
    }

    private static @Nullable Reason proof(
            String key, Approval.ApprovedProof approved, DecisionContent decision, Facts now) {
        Standing.Result result = now.results().get(key);
        if (result == null) {
            return new Reason(ApprovalState.FRESH_LOOK, Cause.PROOF, key, "its proof is gone", Set.of());
        }
        Set<String> paths = changedPaths(approved.relied(), result.relied());
        boolean sameInputs = paths.isEmpty() && approved.version().equals(result.version());
        Set<String> through = through(paths);
        if (result.refusal() != null) {
            return new Reason(
                    decision.safetyList() ? ApprovalState.LAPSED : ApprovalState.FRESH_LOOK,
                    Cause.PROOF,
                    key,
                    "its proof cannot be recomputed: " + result.refusal(),
                    through);
        }
        if (!approved.outputs().equals(result.outputs())) {
            return new Reason(ApprovalState.LAPSED, Cause.PROOF, key, "another result", through);
        }
        if (sameInputs) {
            return null;
        }
        return decision.safetyList()
                ? new Reason(
                        ApprovalState.LAPSED, Cause.PROOF, key, "safety list: an input changed, same result", through)
                : new Reason(ApprovalState.CARRIED_OVER, Cause.PROOF, key, "recomputed, same result", through);
    }

    /** The proofs through whose results alone a difference comes; empty where any value of the record differs. */
    private static Set<String> through(Set<String> paths) {
        Set<String> proofs = new LinkedHashSet<>();
        for (String path : paths) {
            String proof = Issue.proofOf(path);
            if (proof == null) {
                return Set.of();
            }
            proofs.add(proof);
        }
        return proofs;
    }

    private static void neighbours(String code, Approval.Content approved, Facts now, List<Reason> reasons) {
        for (Arrow arrow : DecisionTable.into(code)) {
            Approval.Neighbour before = approved.neighbours().get(arrow.from());
            if (before != null
                    && arrow.moved(before, now.neighbour(arrow.from())).fires()) {
                reasons.add(new Reason(
                        arrow.hard() ? ApprovalState.LAPSED : ApprovalState.FRESH_LOOK,
                        Cause.NEIGHBOUR,
                        arrow.from(),
                        arrow.because(),
                        Set.of()));
            }
        }
    }

    /** The paths whose values differ, present in one or in both. */
    static Set<String> changed(Map<String, String> before, Map<String, String> now) {
        Set<String> paths = new LinkedHashSet<>(before.keySet());
        paths.addAll(now.keySet());
        paths.removeIf(path -> Objects.equals(before.get(path), now.get(path)));
        return paths;
    }

    static Set<String> changedPaths(List<Relied> before, List<Relied> now) {
        return changed(byPath(before), byPath(now));
    }

    static Map<String, String> byPath(List<Relied> relied) {
        Map<String, String> values = new LinkedHashMap<>();
        relied.forEach(one -> values.put(one.path(), one.value()));
        return values;
    }
}
