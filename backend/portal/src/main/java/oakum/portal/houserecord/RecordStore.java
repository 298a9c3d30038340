package oakum.portal.houserecord;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Refused;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.standing.Resolved;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;

/** Reads and saves the parts of a house. */
@Service
class RecordStore implements HouseRecord {
    private static final Pattern ROW_OF_PATH = Pattern.compile("^(.*\\[[^]]*])");

    private final HouseRows houses;
    private final RevisionRows revisions;
    private final ProofRows proofs;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    RecordStore(HouseRows houses, RevisionRows revisions, ProofRows proofs, Access access, Audit audit, Clock clock) {
        this.houses = houses;
        this.revisions = revisions;
        this.proofs = proofs;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void lock(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        locked(houseId);
    }

    House locked(String houseId) {
        return houses.lock(houseId).orElseThrow(() -> Problem.notFound("house", houseId));
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Snapshot snapshot(String houseId) {
        Parts parts = parts(houseId);
        return new Snapshot(houseId, parts, Snapshot.values(parts), proofs.latest(houseId));
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Map<String, String> valuesOf(String houseId) {
        return Snapshot.values(parts(houseId));
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Parts parts(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        Map<PartKind, Revision> latest = revisions.latest(houseId);
        if (!latest.containsKey(PartKind.HOUSE)) {
            throw Problem.notFound("house", houseId);
        }
        Map<PartKind, Integer> numbers = new EnumMap<>(PartKind.class);
        latest.forEach((kind, revision) -> numbers.put(kind, revision.revision()));
        return new Parts(
                (HouseMeasures) document(latest, PartKind.HOUSE),
                (EnclosurePart) document(latest, PartKind.ENCLOSURE),
                (AirPart) document(latest, PartKind.AIR),
                (HeatPart) document(latest, PartKind.HEAT),
                (MoisturePart) document(latest, PartKind.MOISTURE),
                (WaterPart) document(latest, PartKind.WATER),
                (SensorsPart) document(latest, PartKind.SENSORS),
                numbers);
    }

    private static Record document(Map<PartKind, Revision> latest, PartKind kind) {
        Revision revision = latest.get(kind);
        return revision == null ? empty(kind) : revision.document();
    }

    /** A part that nobody has saved yet; only the part "house" is never empty. */
    static Record empty(PartKind kind) {
        return Canonical.read(kind.type(), Map.of());
    }

    @Override
    @Transactional
    public int save(String houseId, PartKind kind, Record part, String reason) {
        access.require(Permission.EDIT_RECORD, houseId);
        House house = locked(houseId);
        return add(house, kind, part, reason, revisions.latest(houseId, kind).orElse(null));
    }

    /** Saves a part as a person sends it, made from the revision that the person read. */
    @Transactional
    PartView save(String houseId, PartKind kind, JsonNode document, @Nullable String ifMatch, @Nullable String reason) {
        access.require(Permission.EDIT_RECORD, houseId);
        if (kind == PartKind.HOUSE) {
            throw Problem.unprocessable(
                    "part-of-house", "part", "The name, place and measures are changed at the house itself.");
        }
        House house = locked(houseId);
        Revision before = revisions.latest(houseId, kind).orElse(null);
        EntityTag.require(ifMatch, before == null ? 0 : before.revision());
        add(house, kind, StrictReader.read(kind, document), requireReason(reason), before);
        return part(houseId, kind);
    }

    int add(House house, PartKind kind, Record part, String reason, @Nullable Revision before) {
        try {
            Limits.require(part);
        } catch (Refused refused) {
            throw StrictReader.under(kind.key() + ".", refused);
        }
        Caller caller = access.caller();
        int next = before == null ? 1 : before.revision() + 1;
        revisions.add(
                house.id(),
                new Revision(kind.key(), next, part, caller.personId(), caller.displayName(), clock.instant(), reason));
        if (kind == PartKind.HOUSE) {
            house.measured(next);
            houses.saveAndFlush(house);
        }
        audit.record(
                "part-changed",
                house.id(),
                kind.title() + ", revision " + next + ": " + reason,
                "/houses/" + house.id() + "/parts/" + kind.key());
        return next;
    }

    static String requireReason(@Nullable String reason) {
        if (reason == null || reason.isBlank() || reason.length() > 500) {
            throw Problem.unprocessable(
                    "reason-missing", "reason", "Say in 1 to 500 characters why this changes; it stays on the record.");
        }
        return reason.strip();
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    PartView part(String houseId, PartKind kind) {
        access.require(Permission.VIEW_HOUSE, houseId);
        List<String> actions = kind != PartKind.HOUSE && access.may(Permission.EDIT_RECORD, houseId)
                ? List.of("save-part")
                : List.of();
        Revision latest = revisions.latest(houseId, kind).orElse(null);
        return PartView.of(kind, latest, latest == null ? empty(kind) : latest.document(), actions);
    }

    @Transactional(readOnly = true)
    PartView revision(String houseId, PartKind kind, int number) {
        access.require(Permission.VIEW_HOUSE, houseId);
        Revision revision = requireRevision(houseId, kind, number);
        return PartView.of(kind, revision, revision.document(), List.of());
    }

    @Transactional(readOnly = true)
    List<PartView> revisions(String houseId, PartKind kind) {
        access.require(Permission.VIEW_HOUSE, houseId);
        return revisions.all(houseId, kind).stream()
                .map(revision -> PartView.of(kind, revision, revision.document(), List.of()))
                .toList();
    }

    @Transactional(readOnly = true)
    List<ValueDifference> differences(String houseId, PartKind kind, int from, int to) {
        access.require(Permission.VIEW_HOUSE, houseId);
        return between(
                kind,
                from == 0 ? null : requireRevision(houseId, kind, from).document(),
                to == 0 ? null : requireRevision(houseId, kind, to).document());
    }

    private Revision requireRevision(String houseId, PartKind kind, int number) {
        return revisions
                .find(houseId, kind, number)
                .orElseThrow(() -> Problem.notFound("revision of " + kind.key(), number));
    }

    static List<ValueDifference> between(PartKind kind, @Nullable Record before, @Nullable Record after) {
        Map<String, String> was = leaves(kind, before);
        Map<String, String> is = leaves(kind, after);
        Map<String, String> all = new LinkedHashMap<>(was);
        all.putAll(is);
        List<ValueDifference> differences = new ArrayList<>();
        for (String path : all.keySet()) {
            String old = was.get(path);
            String present = is.get(path);
            if (!Objects.equals(old, present)) {
                PathInfo info = Paths.describe(path, all, Map.of());
                differences.add(new ValueDifference(
                        path, info.label(), FieldJson.UnitJson.ofNullable(info.unit()), old, present));
            }
        }
        return differences;
    }

    private static Map<String, String> leaves(PartKind kind, @Nullable Record part) {
        Map<String, String> leaves = new LinkedHashMap<>();
        if (part != null) {
            Canonical.flatten(part).forEach((pointer, text) -> leaves.put(kind.key() + "." + pointer, text));
        }
        return leaves;
    }

    @Override
    public Standing standing(Snapshot snapshot) {
        return new Standing(snapshot.issues(), Catalogue::find);
    }

    @Override
    public PathInfo describe(Snapshot snapshot, String path) {
        return Paths.describe(path, snapshot.values(), snapshot.proofs());
    }

    @Override
    public Tried tried(Snapshot snapshot, List<ValueChange> changes) {
        Map<String, String> values = new LinkedHashMap<>(snapshot.values());
        Map<PartKind, Record> changed = new EnumMap<>(PartKind.class);
        for (ValueChange change : changes) {
            PartKind kind = PartKind.ofPath(change.path()).orElseThrow(() -> unknownPath(change.path()));
            Field field = describe(snapshot, change.path()).field();
            if (field == null || !Resolved.leaves(kind.fields()).contains(pattern(kind, change.path()))) {
                throw unknownPath(change.path());
            }
            requireRow(values, change.path());
            JsonNode value = change.value();
            if (value == null || value.isNull()) {
                if (!field.optional()) {
                    throw StrictReader.malformed(change.path(), "cannot be empty");
                }
                values.remove(change.path());
            } else {
                values.put(change.path(), StrictReader.leaf(change.path(), field, value));
            }
            changed.put(kind, snapshot.parts().of(kind));
        }
        changed.replaceAll((kind, before) -> StrictReader.build(kind, leavesOf(kind, values)));
        changed.entrySet()
                .removeIf(part -> part.getValue().equals(snapshot.parts().of(part.getKey())));
        return new Tried(values, changed);
    }

    private static String pattern(PartKind kind, String path) {
        return Resolved.pattern(path.substring(kind.key().length() + 1));
    }

    private static Map<String, String> leavesOf(PartKind kind, Map<String, String> values) {
        Map<String, String> leaves = new LinkedHashMap<>();
        String prefix = kind.key() + ".";
        values.forEach((path, text) -> {
            if (path.startsWith(prefix)) {
                leaves.put(path.substring(prefix.length()), text);
            }
        });
        return leaves;
    }

    /** A change of one value never calls a row into being; rows are added in the part itself. */
    private static void requireRow(Map<String, String> values, String path) {
        var row = ROW_OF_PATH.matcher(path);
        if (row.find() && values.keySet().stream().noneMatch(at -> at.startsWith(row.group(1) + "."))) {
            throw unknownPath(path);
        }
    }

    private static Problem unknownPath(String path) {
        return Problem.unprocessable(
                "unknown-path",
                path,
                "The record of this house has no value at \"" + path + "\" that could be changed.");
    }

    @Override
    @Transactional
    public void keep(String houseId, Tried tried, Map<String, Standing.Result> results, String reason) {
        access.require(Permission.EDIT_PROOF, houseId);
        House house = locked(houseId);
        if (!tried.changed().isEmpty()) {
            access.require(Permission.EDIT_RECORD, houseId);
        }
        String why = requireReason(reason);
        tried.changed()
                .forEach((kind, part) -> add(
                        house, kind, part, why, revisions.latest(houseId, kind).orElse(null)));
        Map<String, Proof> latest = proofs.latest(houseId);
        Caller caller = access.caller();
        results.forEach((key, result) -> {
            Proof before = latest.get(key);
            if (before != null && result.recomputed() && result.refusal() == null) {
                Proof next = new Proof(
                        key,
                        before.issue() + 1,
                        ProofStore.content(before.content(), result),
                        caller.personId(),
                        caller.displayName(),
                        clock.instant(),
                        why);
                proofs.add(houseId, next);
                audit.record(
                        "proof-kept",
                        houseId,
                        next.content().title() + ", issue " + next.issue() + ": " + why,
                        "/houses/" + houseId + "/proofs/" + key);
            }
        });
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Map<String, ValueOrigin> originsOf(String houseId, Set<String> paths) {
        access.require(Permission.VIEW_HOUSE, houseId);
        Map<String, ValueOrigin> origins = new LinkedHashMap<>();
        for (PartKind kind : PartKind.values()) {
            Set<String> open = new LinkedHashSet<>(paths);
            open.removeIf(path -> PartKind.ofPath(path).orElse(null) != kind);
            Map<String, String> present = null;
            if (open.isEmpty()) {
                continue;
            }
            for (Revision revision : revisions.all(houseId, kind)) {
                Map<String, String> values = leaves(kind, revision.document());
                Map<String, String> now = present == null ? values : present;
                open.removeIf(path -> !Objects.equals(now.get(path), values.get(path)));
                ValueOrigin origin = new ValueOrigin(
                        kind.key(), revision.revision(), revision.madeBy(), revision.madeAt(), revision.reason());
                open.forEach(path -> origins.put(path, origin));
                present = now;
            }
        }
        return origins;
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<RecordChange> history(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        List<RecordChange> history = new ArrayList<>();
        List<Revision> all = revisions.all(houseId);
        for (PartKind kind : PartKind.values()) {
            List<Revision> ofPart = all.stream()
                    .filter(revision -> revision.part().equals(kind.key()))
                    .sorted(Comparator.comparingInt(Revision::revision))
                    .toList();
            Revision before = null;
            for (Revision revision : ofPart) {
                history.add(new RecordChange(
                        RecordChange.Kind.PART,
                        kind.key(),
                        revision.revision(),
                        kind.title(),
                        revision.madeBy(),
                        revision.madeAt(),
                        revision.reason(),
                        before == null ? List.of() : between(kind, before.document(), revision.document())));
                before = revision;
            }
        }
        for (Proof proof : proofs.all(houseId)) {
            history.add(new RecordChange(
                    RecordChange.Kind.PROOF,
                    proof.key(),
                    proof.issue(),
                    proof.content().title(),
                    proof.madeBy(),
                    proof.madeAt(),
                    proof.reason(),
                    List.of()));
        }
        history.sort(Comparator.comparing(RecordChange::when).reversed());
        return history;
    }
}
