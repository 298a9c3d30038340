package oakum.portal.decision;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Verdict;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.PathInfo;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.RecordChange;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.houserecord.Tried;
import oakum.portal.houserecord.ValueDifference;
import oakum.portal.houserecord.ValueOrigin;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Tells what a change reaches, tries other values, and keeps a trial. */
@Service
class ReachStore implements Trials {
    private static final int MOST_TRIALS = 8;

    private final HouseRecord record;
    private final DecisionStore decisions;
    private final ApprovalRows approvals;
    private final Access access;

    ReachStore(HouseRecord record, DecisionStore decisions, ApprovalRows approvals, Access access) {
        this.record = record;
        this.decisions = decisions;
        this.approvals = approvals;
        this.access = access;
    }

    /**
     * Trials side by side.
     *
     * @param nothingElse the record as it is
     * @param rows the numbers in the same order for every column: the record as it is, then each trial
     */
    public record Comparison(Reach nothingElse, List<Reach> trials, List<ComparisonRow> rows) {}

    /** One number in every column. */
    public record ComparisonRow(
            String proofKey,
            String proofTitle,
            String name,
            String label,
            FieldJson.@Nullable UnitJson unit,
            @Nullable String approved,
            List<ComparisonCell> cells) {}

    /** One number in one column; without a value where it could not be computed. */
    public record ComparisonCell(
            @Nullable String value,
            @Nullable String limit,
            @Nullable Verdict verdict) {}

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Reach reach(String houseId) {
        Facts facts = facts(houseId);
        return reach("", facts, facts.snapshot().values());
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Reach trial(String houseId, Trial trial) {
        return reach(facts(houseId), trial);
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    Comparison compare(String houseId, List<Trial> trials) {
        Facts facts = facts(houseId);
        if (trials.isEmpty() || trials.size() > MOST_TRIALS) {
            throw Problem.unprocessable("too-many-trials", "trials", "One to " + MOST_TRIALS + " trials side by side.");
        }
        List<Facts> columns = new ArrayList<>(List.of(facts));
        trials.forEach(trial -> columns.add(tried(facts, record.tried(facts.snapshot(), trial.changes()))));
        List<Reach> reaches = trials.stream().map(trial -> reach(facts, trial)).toList();
        return new Comparison(reach("", facts, facts.snapshot().values()), reaches, rows(facts, columns));
    }

    /** Every proof that differs anywhere, with all its leading numbers in every column. */
    private List<ComparisonRow> rows(Facts facts, List<Facts> columns) {
        List<Approval> given = approvals.ofHouse(facts.snapshot().houseId());
        Map<String, ReachFinder.Link> differing = new LinkedHashMap<>();
        List<ReachFinder> finders =
                columns.stream().map(column -> new ReachFinder(column, given)).toList();
        finders.forEach(finder -> finder.links().forEach(link -> differing.putIfAbsent(link.key(), link)));
        List<ComparisonRow> rows = new ArrayList<>();
        differing.forEach((key, link) -> {
            List<Map<String, Reach.ChainOutput>> byName = new ArrayList<>();
            for (Facts column : columns) {
                Standing.Result result = Objects.requireNonNull(column.results().get(key));
                Map<String, Reach.ChainOutput> outputs = new LinkedHashMap<>();
                ReachFinder.outputs(new ReachFinder.Link(key, link.proof(), link.basis(), result, Set.of()))
                        .forEach(output -> outputs.put(output.name(), output));
                byName.add(outputs);
            }
            byName.get(0).forEach((name, output) -> {
                if (output.leading() && output.unit() != null) {
                    rows.add(new ComparisonRow(
                            key,
                            link.proof().content().title(),
                            name,
                            output.label(),
                            output.unit(),
                            output.old(),
                            byName.stream()
                                    .map(column -> cell(column.get(name)))
                                    .toList()));
                }
            });
        });
        return rows;
    }

    private static ComparisonCell cell(Reach.@Nullable ChainOutput output) {
        return output == null
                ? new ComparisonCell(null, null, null)
                : new ComparisonCell(output.present(), output.limit(), output.verdict());
    }

    @Override
    @Transactional
    public Reach take(String houseId, Taking taking) {
        access.require(Permission.EDIT_PROOF, houseId);
        record.lock(houseId);
        Facts facts = facts(houseId);
        Tried tried = record.tried(facts.snapshot(), taking.changes());
        Facts then = tried(facts, tried);
        String stands = copyCode(then);
        if (!stands.equals(taking.copyCode())) {
            throw Problem.conflict(
                            "not-what-stands",
                            "Not taken: the record has moved since this trial was computed. Compute it again.")
                    .with("copyCode", stands);
        }
        then.results().forEach((key, result) -> {
            Proof.Content content =
                    Objects.requireNonNull(then.snapshot().proofs().get(key)).content();
            if (result.refusal() != null && content.kind() == Proof.Kind.COMPUTED) {
                throw Problem.conflict(
                        "cannot-recompute",
                        "Not taken: " + content.title() + " cannot be computed. " + result.refusal());
            }
        });
        record.keep(houseId, tried, then.results(), taking.reason());
        if (taking.decision() != null && taking.alternative() != null) {
            decisions.choose(houseId, taking.decision(), taking.alternative(), taking.reason());
        }
        return reach(houseId);
    }

    private Facts facts(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        return decisions.facts(houseId);
    }

    private Facts tried(Facts facts, Tried tried) {
        return Facts.of(facts.snapshot(), tried.values(), record.standing(facts.snapshot()), facts.decisions());
    }

    private Reach reach(Facts facts, Trial trial) {
        Tried tried = record.tried(facts.snapshot(), trial.changes());
        return reach(trial.title(), tried(facts, tried), facts.snapshot().values());
    }

    private Reach reach(String title, Facts facts, Map<String, String> saved) {
        long begun = System.nanoTime();
        String houseId = facts.snapshot().houseId();
        ReachFinder finder = new ReachFinder(facts, approvals.ofHouse(houseId));
        ReachFinder.Asked asked = finder.asked();
        List<Reach.MovedDecision> moved = finder.moved();
        Set<String> concerned = new LinkedHashSet<>();
        moved.forEach(decision -> concerned.add(decision.code()));
        asked.now().forEach(decision -> concerned.add(decision.code()));
        asked.later().forEach(decision -> concerned.add(decision.code()));
        return new Reach(
                houseId,
                title,
                changedValues(finder, facts, saved),
                finder.links().stream().map(link -> link(finder, facts, link)).toList(),
                moved,
                asked.now(),
                asked.later(),
                finder.quiet(),
                finder.orders(concerned),
                copyCode(facts),
                (System.nanoTime() - begun) / 1e9,
                actions(houseId, facts));
    }

    private List<String> actions(String houseId, Facts facts) {
        List<String> actions = new ArrayList<>();
        if (access.may(Permission.EDIT_PROOF, houseId)) {
            if (access.may(Permission.EDIT_RECORD, houseId)) {
                actions.add("take-trial");
            }
            if (facts.results().values().stream().anyMatch(r -> r.recomputed() && r.refusal() == null)) {
                actions.add("recompute");
            }
        }
        return actions;
    }

    private Reach.ChainLink link(ReachFinder finder, Facts facts, ReachFinder.Link link) {
        Map<String, String> before = ApprovalStanding.byPath(link.basis().relied());
        Map<String, String> now = ApprovalStanding.byPath(link.result().relied());
        return new Reach.ChainLink(
                link.key(),
                link.proof().content().title(),
                link.basis().issue(),
                link.proof().content().calculation(),
                Objects.requireNonNull(facts.states().get(link.key())).state(),
                link.changedPaths().stream()
                        .map(path -> difference(facts, path, before.get(path), now.get(path)))
                        .toList(),
                ReachFinder.outputs(link),
                link.result().refusal(),
                finder.decisionsOn(link.key()));
    }

    private ValueDifference difference(Facts facts, String path, @Nullable String old, @Nullable String present) {
        PathInfo info = record.describe(facts.snapshot(), path);
        return new ValueDifference(path, info.label(), FieldJson.UnitJson.ofNullable(info.unit()), old, present);
    }

    private List<Reach.ChangedValue> changedValues(ReachFinder finder, Facts facts, Map<String, String> saved) {
        Map<String, @Nullable String> old = finder.changedPaths();
        // a trial also tells what nobody has relied on yet
        ApprovalStanding.changed(saved, facts.values()).forEach(path -> old.putIfAbsent(path, saved.get(path)));
        Set<String> ofRecord = new HashSet<>(old.keySet());
        ofRecord.removeIf(
                path -> !Objects.equals(saved.get(path), facts.values().get(path)));
        Map<String, ValueOrigin> origins = record.originsOf(facts.snapshot().houseId(), ofRecord);
        return old.entrySet().stream()
                .map(entry -> {
                    PathInfo info = record.describe(facts.snapshot(), entry.getKey());
                    ValueOrigin origin = origins.get(entry.getKey());
                    return new Reach.ChangedValue(
                            entry.getKey(),
                            info.label(),
                            FieldJson.UnitJson.ofNullable(info.unit()),
                            entry.getValue(),
                            facts.values().get(entry.getKey()),
                            origin == null ? null : origin.madeBy(),
                            origin == null ? null : origin.madeAt(),
                            origin == null ? null : origin.reason());
                })
                .toList();
    }

    /** Stands for all values, the issues they were compared with and every result. */
    private static String copyCode(Facts facts) {
        StringBuilder shown = new StringBuilder();
        facts.values()
                .forEach((path, value) ->
                        shown.append(path).append('=').append(value).append('\n'));
        Snapshot snapshot = facts.snapshot();
        facts.results().forEach((key, result) -> {
            var proof = Objects.requireNonNull(snapshot.proofs().get(key));
            shown.append(key)
                    .append(' ')
                    .append(proof.issue())
                    .append(' ')
                    .append(result.outputs())
                    .append('\n');
        });
        return Canonical.copyCode(shown.toString());
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<ChangeEntry> history(String houseId) {
        Facts facts = facts(houseId);
        List<Approval> given = approvals.ofHouse(houseId);
        Set<String> stillOpen = new HashSet<>();
        record.originsOf(houseId, new ReachFinder(facts, given).changedPaths().keySet())
                .values()
                .forEach(origin -> stillOpen.add(origin.part() + " " + origin.revision()));
        List<ChangeEntry> history = new ArrayList<>();
        for (RecordChange change : record.history(houseId)) {
            boolean part = change.kind() == RecordChange.Kind.PART;
            history.add(new ChangeEntry(
                    houseId,
                    part ? ChangeEntry.Kind.PART : ChangeEntry.Kind.PROOF,
                    change.key(),
                    change.number(),
                    change.title(),
                    change.who(),
                    change.when(),
                    change.why(),
                    change.values(),
                    part && stillOpen.contains(change.key() + " " + change.number())));
        }
        for (Approval approval : given) {
            DecisionContent content = facts.decision(approval.code());
            String title = content == null ? approval.code() : content.title();
            history.add(entry(
                    houseId,
                    ChangeEntry.Kind.APPROVAL,
                    approval,
                    title,
                    approval.person(),
                    approval.at(),
                    "copy code " + approval.copyCode()));
            if (approval.withdrawnAt() != null) {
                history.add(entry(
                        houseId,
                        ChangeEntry.Kind.WITHDRAWAL,
                        approval,
                        title,
                        Objects.requireNonNullElse(approval.withdrawnBy(), ""),
                        approval.withdrawnAt(),
                        Objects.requireNonNullElse(approval.withdrawnReason(), "")));
            }
        }
        history.sort(Comparator.comparing(ChangeEntry::when).reversed());
        return history;
    }

    private static ChangeEntry entry(
            String houseId,
            ChangeEntry.Kind kind,
            Approval approval,
            String title,
            String who,
            Instant when,
            String why) {
        return new ChangeEntry(houseId, kind, approval.code(), 0, title, who, when, why, List.of(), false);
    }
}
