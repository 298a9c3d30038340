package oakum.portal.decision;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import oakum.portal.decision.ApprovalStanding.Cause;
import oakum.portal.decision.ApprovalStanding.Reason;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.ProofOutput;
import oakum.portal.houserecord.standing.Issue;
import oakum.portal.houserecord.standing.Standing;
import org.jspecify.annotations.Nullable;

/** Follows a change through proofs, approvals and arrows. Holds no state of its own and asks no database. */
final class ReachFinder {
    private final Facts facts;
    private final List<Approval> given;
    private final Map<String, List<Reason>> reasons = new LinkedHashMap<>();

    ReachFinder(Facts facts, List<Approval> given) {
        this.facts = facts;
        this.given = given;
        facts.decisions().forEach((code, content) -> {
            List<Reason> all = new ArrayList<>();
            for (Approval approval : DecisionStore.latest(code, given)) {
                for (Reason reason :
                        ApprovalStanding.of(approval, content, facts).reasons()) {
                    if (reason.weight() != ApprovalState.CARRIED_OVER && !all.contains(reason)) {
                        all.add(reason);
                    }
                }
            }
            if (!all.isEmpty()) {
                reasons.put(code, all);
            }
        });
    }

    /** Who is asked, and when. */
    record Asked(List<Reach.ReachedDecision> now, List<Reach.ReachedDecision> later) {}

    Asked asked() {
        Map<String, Reach.ReachedDecision> now = new LinkedHashMap<>();
        List<Reach.ReachedDecision> later = new ArrayList<>();
        reasons.forEach((code, all) -> {
            String before = settledBefore(code, all);
            if (before == null) {
                now.put(code, reached(code, fate(all), sentences(all), null, false));
            } else {
                later.add(reached(code, Reach.Fate.WAITING, sentences(all), before, false));
            }
        });
        Set<String> waiting = new LinkedHashSet<>();
        later.forEach(decision -> waiting.add(decision.code()));
        now.forEach((code, decision) -> {
            if (decision.state() == Reach.Fate.LAPSED) {
                DecisionTable.from(code).forEach(arrow -> follow(arrow, now, waiting, later));
            }
        });
        return new Asked(List.copyOf(now.values()), later);
    }

    /** The next hop is only told, not asked, until the one before it is settled. */
    private void follow(
            Arrow arrow,
            Map<String, Reach.ReachedDecision> now,
            Set<String> waiting,
            List<Reach.ReachedDecision> later) {
        boolean again = now.containsKey(arrow.to());
        if (facts.decision(arrow.to()) != null && (!again || arrow.hard()) && waiting.add(arrow.to())) {
            later.add(reached(arrow.to(), Reach.Fate.WAITING, List.of(arrow.because()), arrow.from(), again));
        }
    }

    /**
     * The decision that must be settled before this one is asked: where everything that speaks against this one comes
     * through results of proofs that another reached decision rests on.
     */
    private @Nullable String settledBefore(String code, List<Reason> all) {
        DecisionContent content = Objects.requireNonNull(facts.decision(code));
        Set<String> through = new LinkedHashSet<>();
        for (Reason reason : all) {
            if (reason.cause() != Cause.PROOF || reason.through().isEmpty()) {
                return null;
            }
            through.addAll(reason.through());
        }
        through.removeAll(content.proofs());
        for (Map.Entry<String, List<Reason>> other : reasons.entrySet()) {
            DecisionContent rests = Objects.requireNonNull(facts.decision(other.getKey()));
            if (!other.getKey().equals(code) && rests.proofs().stream().anyMatch(through::contains)) {
                return other.getKey();
            }
        }
        return null;
    }

    private static Reach.Fate fate(List<Reason> all) {
        return all.stream().anyMatch(reason -> reason.weight() == ApprovalState.LAPSED)
                ? Reach.Fate.LAPSED
                : Reach.Fate.FRESH_LOOK;
    }

    private static List<String> sentences(List<Reason> all) {
        return all.stream().map(Reason::sentence).distinct().toList();
    }

    private Reach.ReachedDecision reached(
            String code, Reach.Fate fate, List<String> because, @Nullable String when, boolean again) {
        DecisionContent content = Objects.requireNonNull(facts.decision(code));
        return new Reach.ReachedDecision(
                code,
                content.title(),
                fate,
                content.safetyList(),
                content.approvers(),
                content.outsideApprovers(),
                because,
                when,
                again,
                content.orders().stream().anyMatch(order -> order.state() == OrderLine.State.BOUGHT),
                content.orders().stream().anyMatch(order -> order.state() == OrderLine.State.BUILT),
                content.dueOn());
    }

    /** The arrows of what was approved whose source moved within their band: nobody is asked because of them. */
    List<Reach.QuietArrow> quiet() {
        Set<Reach.QuietArrow> quiet = new LinkedHashSet<>();
        facts.decisions().forEach((code, content) -> {
            for (Approval approval : DecisionStore.latest(code, given)) {
                for (Arrow arrow : DecisionTable.into(code)) {
                    Approval.Neighbour before = approval.approved().neighbours().get(arrow.from());
                    if (approval.withdrawnAt() == null && before != null) {
                        arrow.moved(before, facts.neighbour(arrow.from())).quiet().stream()
                                .map(sentence -> new Reach.QuietArrow(arrow.from(), code, content.title(), sentence))
                                .forEach(quiet::add);
                    }
                }
            }
        });
        return List.copyOf(quiet);
    }

    /** The decisions whose own values or choice somebody knew otherwise. */
    List<Reach.MovedDecision> moved() {
        Set<String> codes = new LinkedHashSet<>();
        reasons.forEach((code, all) -> all.forEach(reason -> {
            if (reason.cause() == Cause.NEIGHBOUR) {
                codes.add(reason.source());
            } else if (reason.cause() == Cause.OWN) {
                codes.add(code);
            }
        }));
        return facts.decisions().entrySet().stream()
                .filter(decision -> codes.contains(decision.getKey()))
                .map(decision -> new Reach.MovedDecision(
                        decision.getKey(), decision.getValue().title()))
                .toList();
    }

    List<Reach.ReachedOrder> orders(Set<String> concerned) {
        List<Reach.ReachedOrder> orders = new ArrayList<>();
        facts.decisions().forEach((code, content) -> {
            if (concerned.contains(code)) {
                content.orders()
                        .forEach(line -> orders.add(
                                new Reach.ReachedOrder(code, line.id(), line.title(), line.state(), line.note())));
            }
        });
        return orders;
    }

    /** What an approval or, without one, the latest issue of a proof rests on. */
    private Approval.ApprovedProof basis(String key, Proof proof) {
        Approval.ApprovedProof approved = null;
        for (Map.Entry<String, DecisionContent> decision : facts.decisions().entrySet()) {
            for (Approval approval : DecisionStore.latest(decision.getKey(), given)) {
                Approval.ApprovedProof candidate = approval.approved().proofs().get(key);
                if (candidate != null && (approved == null || candidate.issue() > approved.issue())) {
                    approved = candidate;
                }
            }
        }
        Proof.Content c = proof.content();
        return approved != null
                ? approved
                : new Approval.ApprovedProof(
                        proof.issue(), c.copyCode(), c.calculationVersion(), c.relied(), c.inputs(), c.outputs());
    }

    /** One proof as it was relied on and as it comes out now; only those that differ. */
    record Link(
            String key, Proof proof, Approval.ApprovedProof basis, Standing.Result result, Set<String> changedPaths) {}

    List<Link> links() {
        List<Link> links = new ArrayList<>();
        facts.results().forEach((key, result) -> {
            Proof proof = Objects.requireNonNull(facts.snapshot().proofs().get(key));
            Approval.ApprovedProof basis = basis(key, proof);
            Set<String> paths = ApprovalStanding.changedPaths(basis.relied(), result.relied());
            if (!paths.isEmpty()
                    || !basis.outputs().equals(result.outputs())
                    || !basis.version().equals(result.version())) {
                links.add(new Link(key, proof, basis, result, paths));
            }
        });
        return links;
    }

    static List<Reach.ChainOutput> outputs(Link link) {
        Map<String, ProofOutput> before = new LinkedHashMap<>();
        ProofOutput.of(
                        link.proof().content(),
                        link.basis().inputs(),
                        link.basis().outputs())
                .forEach(output -> before.put(output.name(), output));
        List<Reach.ChainOutput> outputs = new ArrayList<>();
        for (ProofOutput now : ProofOutput.of(
                link.proof().content(), link.result().inputs(), link.result().outputs())) {
            ProofOutput old = before.get(now.name());
            if (now.leading() || now.limit() != null || now.verdict() != null) {
                outputs.add(new Reach.ChainOutput(
                        now.name(),
                        now.label(),
                        now.symbol(),
                        now.unit(),
                        old == null ? null : old.value(),
                        now.value(),
                        now.limit(),
                        old == null ? null : old.verdict(),
                        now.verdict(),
                        now.leading()));
            }
        }
        return outputs;
    }

    List<String> decisionsOn(String proofKey) {
        return facts.decisions().entrySet().stream()
                .filter(decision -> decision.getValue().proofs().contains(proofKey))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Every path whose value is another than somebody relied on, with that value; results are left out. */
    Map<String, @Nullable String> changedPaths() {
        Map<String, @Nullable String> old = new LinkedHashMap<>();
        for (Link link : links()) {
            Map<String, String> before = ApprovalStanding.byPath(link.basis().relied());
            link.changedPaths().stream()
                    .filter(path -> Issue.proofOf(path) == null)
                    .forEach(path -> old.putIfAbsent(path, before.get(path)));
        }
        facts.decisions().forEach((code, content) -> {
            for (Approval approval : DecisionStore.latest(code, given)) {
                differing(approval.approved().governed(), facts.under(content.governedPaths()), old);
                approval.approved()
                        .neighbours()
                        .forEach((source, before) -> differing(
                                before.values(), facts.neighbour(source).values(), old));
            }
        });
        return old;
    }

    private static void differing(
            Map<String, String> before, Map<String, String> now, Map<String, @Nullable String> old) {
        ApprovalStanding.changed(before, now).forEach(path -> old.putIfAbsent(path, before.get(path)));
    }
}
