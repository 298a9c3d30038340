package oakum.portal.houserecord;

import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Unit;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.houserecord.standing.Relied;
import oakum.portal.houserecord.standing.Resolved;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Makes, submits and recomputes proofs. Values are read under the house's lock, together with what they replace. */
@Service
class ProofStore implements Proofs {
    private static final Pattern KEY = Pattern.compile("[a-z][A-Za-z0-9]{0,39}");

    private final RecordStore record;
    private final ProofRows rows;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    ProofStore(RecordStore record, ProofRows rows, Access access, Audit audit, Clock clock) {
        this.record = record;
        this.rows = rows;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    @Override
    @Transactional
    public ProofView make(
            String houseId, String key, String title, String calculation, List<Binding> bindings, String reason) {
        Snapshot snapshot = lockedSnapshot(houseId, key);
        Calculation<?, ?> found = bindable(snapshot, calculation, bindings);
        requireNoLoop(snapshot, key, bindings);
        Map<String, String> values = record.standing(snapshot).withResults(snapshot.values());
        Standing.Result result = Standing.required(found, Resolved.of(bindings, found.inputs(), values));
        Proof.Content content = new Proof.Content(
                Proof.Kind.COMPUTED,
                title,
                found.id(),
                found.version(),
                bindings,
                result.relied(),
                result.inputs(),
                result.outputs(),
                result.notices(),
                null,
                result.copyCode());
        return add(snapshot, key, content, reason);
    }

    private Calculation<?, ?> bindable(Snapshot snapshot, String calculation, List<Binding> bindings) {
        Calculation<?, ?> found = Catalogue.find(calculation)
                .orElseThrow(() -> Problem.unprocessable(
                        "unknown-calculation", "calculation", "There is no calculation \"" + calculation + "\"."));
        Set<String> declared = Resolved.leaves(found.inputs());
        for (Binding binding : bindings) {
            requireInput(found, declared, binding);
            requirePath(snapshot, binding);
        }
        return found;
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Drawn draw(String houseId, String calculation, List<Binding> bindings) {
        Snapshot snapshot = record.snapshot(houseId);
        Calculation<?, ?> found = bindable(snapshot, calculation, bindings);
        Resolved drawn =
                Resolved.of(bindings, found.inputs(), record.standing(snapshot).withResults(snapshot.values()));
        Map<String, Integer> revisions = new LinkedHashMap<>();
        snapshot.parts().revisions().forEach((kind, revision) -> revisions.put(kind.key(), revision));
        return new Drawn(drawn.inputs(), drawn.relied(), revisions);
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<List<ValueDifference>> differences(String houseId, List<Bound> results) {
        Snapshot snapshot = record.snapshot(houseId);
        Map<String, String> values = record.standing(snapshot).withResults(snapshot.values());
        return results.stream()
                .map(bound -> Catalogue.find(bound.calculation())
                        .map(found -> Resolved.of(bound.bindings(), found.inputs(), values)
                                .relied())
                        .map(now -> Resolved.differences(bound.relied(), now).stream()
                                .map(d -> difference(snapshot, d.path(), d.old(), d.present()))
                                .toList())
                        .orElse(List.of()))
                .toList();
    }

    @Override
    @Transactional
    public ProofView submit(
            String houseId, String key, String title, List<Binding> seen, Proof.Submission submission, String reason) {
        Snapshot snapshot = lockedSnapshot(houseId, key);
        requireNoLoop(snapshot, key, seen);
        Map<String, String> values = record.standing(snapshot).withResults(snapshot.values());
        List<Binding> bindings = new ArrayList<>();
        for (Binding binding : seen) {
            requirePath(snapshot, binding);
            String path = binding.path();
            String now = path == null ? null : values.get(path);
            if (path == null || now == null) {
                throw Problem.unprocessable(
                        "unknown-path",
                        String.valueOf(path),
                        "Submitted evidence names single values of the record that it rests on.");
            }
            if (!now.equals(binding.value())) {
                throw Problem.conflict(
                        "not-what-stands",
                        "The evidence rests on " + path + " = " + binding.value() + "; the record now says " + now
                                + ". Look at it again before you submit.");
            }
            bindings.add(new Binding(path, path, null, binding.origin(), Map.of()));
        }
        Map<String, String> outputs = new LinkedHashMap<>();
        for (Proof.SubmittedResult result : submission.results()) {
            requireUnit(result);
            outputs.put(result.name(), Canonical.text(result.value()));
        }
        List<Relied> relied = Resolved.of(bindings, List.of(), values).relied();
        Map<String, String> inputs = new LinkedHashMap<>();
        relied.forEach(one -> inputs.put(one.input(), one.value()));
        Proof.Content content = new Proof.Content(
                Proof.Kind.SUBMITTED,
                title,
                null,
                "",
                bindings,
                relied,
                inputs,
                outputs,
                List.of(),
                submission,
                Canonical.copyCode(submission + "\n" + inputs + "\n--\n" + outputs));
        return add(snapshot, key, content, reason);
    }

    @Override
    @Transactional
    public ProofView recompute(String houseId, String key, String reason) {
        Snapshot snapshot = lockedSnapshot(houseId, key);
        if (!snapshot.proofs().containsKey(key)) {
            throw Problem.notFound("proof", key);
        }
        Standing standing = record.standing(snapshot);
        Standing.Of state = standing.states(snapshot.values()).get(key);
        if (state == null || state.state() == ProofState.CURRENT) {
            throw Problem.conflict("proof-current", "Nothing to recompute: everything it relied on is as it was.");
        }
        Set<String> concerned = standing.upTo(key);
        Map<String, Standing.Result> results = new LinkedHashMap<>(standing.recomputed(snapshot.values()));
        results.keySet().retainAll(concerned);
        results.forEach((one, result) -> requireComputed(snapshot, one, result));
        record.keep(houseId, new Tried(snapshot.values(), Map.of()), results, reason);
        return one(record.snapshot(houseId), key);
    }

    private static void requireComputed(Snapshot snapshot, String key, Standing.Result result) {
        if (result.refusal() != null) {
            Proof proof = snapshot.proofs().get(key);
            throw Problem.conflict(
                    "cannot-recompute",
                    (proof == null ? key : proof.content().title()) + " cannot be recomputed: " + result.refusal());
        }
    }

    private Snapshot lockedSnapshot(String houseId, String key) {
        access.require(Permission.EDIT_PROOF, houseId);
        record.locked(houseId);
        if (!KEY.matcher(key).matches()) {
            throw Problem.unprocessable(
                    "proof-key",
                    "key",
                    "A proof's key is a small letter and up to 39 letters or digits: housePressure.");
        }
        return record.snapshot(houseId);
    }

    private ProofView add(Snapshot snapshot, String key, Proof.Content content, String reason) {
        String why = RecordStore.requireReason(reason);
        Proof before = snapshot.proofs().get(key);
        Caller caller = access.caller();
        Proof proof = new Proof(
                key,
                before == null ? 1 : before.issue() + 1,
                content,
                caller.personId(),
                caller.displayName(),
                clock.instant(),
                why);
        rows.add(snapshot.houseId(), proof);
        audit.record(
                "proof-kept",
                snapshot.houseId(),
                content.title() + ", issue " + proof.issue() + ": " + why,
                "/houses/" + snapshot.houseId() + "/proofs/" + key);
        return one(record.snapshot(snapshot.houseId()), key);
    }

    /** The next issue of a proof with a new result. */
    static Proof.Content content(Proof.Content before, Standing.Result result) {
        return new Proof.Content(
                before.kind(),
                before.title(),
                before.calculation(),
                result.version(),
                before.bindings(),
                result.relied(),
                result.inputs(),
                result.outputs(),
                result.notices(),
                before.submission(),
                result.copyCode());
    }

    private static void requireInput(Calculation<?, ?> calculation, Set<String> declared, Binding binding) {
        String pattern = Resolved.pattern(binding.input());
        boolean known = declared.contains(pattern)
                || (binding.path() != null
                        && declared.stream()
                                .anyMatch(leaf -> leaf.startsWith(pattern + ".") || leaf.startsWith(pattern + "[")));
        if (!known) {
            throw Problem.unprocessable(
                    "unknown-input",
                    binding.input(),
                    calculation.title() + " has no input \"" + binding.input() + "\".");
        }
        if ((binding.path() == null) == (binding.value() == null)) {
            throw Problem.unprocessable(
                    "unknown-input",
                    binding.input(),
                    binding.input() + " needs either a path of the record or a typed value.");
        }
    }

    private void requirePath(Snapshot snapshot, Binding binding) {
        String path = binding.path();
        if (path != null
                && record.describe(snapshot, path).field() == null
                && record.describe(snapshot, path).unit() == null) {
            throw Problem.unprocessable(
                    "unknown-path", path, "The record of this house has nothing at \"" + path + "\".");
        }
    }

    private void requireNoLoop(Snapshot snapshot, String key, List<Binding> bindings) {
        if (record.standing(snapshot).closesLoop(key, bindings)) {
            throw Problem.unprocessable(
                    "proof-loop",
                    "bindings",
                    "The proof " + key + " would rest on its own result; break the loop first.");
        }
    }

    private static void requireUnit(Proof.SubmittedResult result) {
        for (Unit unit : Unit.values()) {
            if (unit.name().equals(result.unit()) && result.name().endsWith(unit.nameEnding())) {
                return;
            }
        }
        throw Problem.unprocessable(
                "unknown-unit",
                "submission.results." + result.name(),
                "\"" + result.unit() + "\" is no unit of the calculations, or the name " + result.name()
                        + " does not end in it.");
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<ProofView> list(String houseId) {
        Snapshot snapshot = record.snapshot(houseId);
        Map<String, Standing.Of> states = record.standing(snapshot).states(snapshot.values());
        return snapshot.proofs().values().stream()
                .map(proof -> view(snapshot, proof, states.get(proof.key())))
                .toList();
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    ProofView find(String houseId, String key) {
        return one(record.snapshot(houseId), key);
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    List<ProofView> issues(String houseId, String key) {
        Snapshot snapshot = record.snapshot(houseId);
        return rows.all(houseId, key).stream()
                .map(proof -> view(snapshot, proof, null))
                .toList();
    }

    private ProofView one(Snapshot snapshot, String key) {
        Proof proof = snapshot.proofs().get(key);
        if (proof == null) {
            throw Problem.notFound("proof", key);
        }
        return view(
                snapshot,
                proof,
                record.standing(snapshot).states(snapshot.values()).get(key));
    }

    private ProofView view(Snapshot snapshot, Proof proof, Standing.@Nullable Of standing) {
        Proof.Content c = proof.content();
        List<String> actions = standing != null
                        && standing.state() != ProofState.CURRENT
                        && c.kind() == Proof.Kind.COMPUTED
                        && access.may(Permission.EDIT_PROOF, snapshot.houseId())
                ? List.of("recompute")
                : List.of();
        return new ProofView(
                proof.key(),
                c.title(),
                c.kind(),
                proof.issue(),
                standing == null ? null : standing.state(),
                c.calculation(),
                c.calculationVersion(),
                c.bindings(),
                c.relied(),
                c.inputs(),
                ProofOutput.of(c, c.inputs(), c.outputs()),
                c.outputs(),
                c.notices(),
                c.submission(),
                c.copyCode(),
                proof.madeBy(),
                proof.madeAt(),
                proof.reason(),
                standing == null
                        ? List.of()
                        : standing.differences().stream()
                                .map(d -> difference(snapshot, d.path(), d.old(), d.present()))
                                .toList(),
                standing == null ? null : standing.newVersion(),
                standing == null ? List.of() : standing.waitingFor(),
                actions);
    }

    private ValueDifference difference(Snapshot snapshot, String path, @Nullable String old, @Nullable String present) {
        PathInfo info = record.describe(snapshot, path);
        return new ValueDifference(path, info.label(), FieldJson.UnitJson.ofNullable(info.unit()), old, present);
    }
}
