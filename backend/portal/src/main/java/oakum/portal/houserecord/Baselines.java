package oakum.portal.houserecord;

import io.swagger.v3.oas.annotations.tags.Tag;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Named sets of revisions: as permitted, as built, as set to work. */
@Service
class Baselines {
    private static final TypeReference<LinkedHashMap<String, Integer>> NUMBERS = new TypeReference<>() {};

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final RecordStore record;
    private final RevisionRows revisions;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Baselines(
            JdbcClient jdbc,
            JsonMapper json,
            RecordStore record,
            RevisionRows revisions,
            Access access,
            Audit audit,
            Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.record = record;
        this.revisions = revisions;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * One named set.
     *
     * @param parts part to revision
     * @param proofs proof to issue
     */
    record Baseline(
            String name,
            Map<String, Integer> parts,
            Map<String, Integer> proofs,
            String madeBy,
            Instant madeAt,
            String reason) {}

    @Transactional
    Baseline keep(String houseId, String name, String reason) {
        access.require(Permission.EDIT_RECORD, houseId);
        record.locked(houseId);
        if (name.isBlank() || name.length() > 60) {
            throw Problem.unprocessable("baseline-name", "name", "A baseline's name has 1 to 60 characters.");
        }
        if (list(houseId).stream().anyMatch(baseline -> baseline.name().equals(name))) {
            throw Problem.conflict(
                    "baseline-exists", "There is a baseline \"" + name + "\" already; it is never rewritten.");
        }
        Snapshot snapshot = record.snapshot(houseId);
        Map<String, Integer> parts = new LinkedHashMap<>();
        snapshot.parts().revisions().forEach((kind, revision) -> parts.put(kind.key(), revision));
        Map<String, Integer> proofs = new LinkedHashMap<>();
        snapshot.proofs().forEach((key, proof) -> proofs.put(key, proof.issue()));
        Caller caller = access.caller();
        Baseline baseline = new Baseline(
                name, parts, proofs, caller.displayName(), clock.instant(), RecordStore.requireReason(reason));
        jdbc.sql(
                        "insert into houserecord.baseline (house_id, name, parts, proofs, made_by, made_by_name, made_at, reason)"
                                + " values (?, ?, ?::jsonb, ?::jsonb, ?, ?, ?, ?)")
                .params(
                        houseId,
                        name,
                        json.writeValueAsString(parts),
                        json.writeValueAsString(proofs),
                        caller.personId(),
                        caller.displayName(),
                        Timestamp.from(baseline.madeAt()),
                        baseline.reason())
                .update();
        audit.record("baseline-kept", houseId, "Baseline \"" + name + "\": " + baseline.reason(), null);
        return baseline;
    }

    @Transactional(readOnly = true)
    List<Baseline> list(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        return jdbc.sql("select name, parts, proofs, made_by_name, made_at, reason from houserecord.baseline"
                        + " where house_id = ? order by made_at, name")
                .params(houseId)
                .query((row, number) -> baseline(row))
                .list();
    }

    private Baseline baseline(ResultSet row) throws SQLException {
        return new Baseline(
                row.getString("name"),
                json.readValue(row.getString("parts"), NUMBERS),
                json.readValue(row.getString("proofs"), NUMBERS),
                row.getString("made_by_name"),
                row.getObject("made_at", OffsetDateTime.class).toInstant(),
                row.getString("reason"));
    }

    /** What differs between two baselines, or between one and today. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    List<ValueDifference> differences(String houseId, String from, @Nullable String to) {
        Map<String, Integer> before = find(houseId, from).parts();
        Map<String, Integer> after = new LinkedHashMap<>();
        if (to == null) {
            record.parts(houseId).revisions().forEach((kind, revision) -> after.put(kind.key(), revision));
        } else {
            after.putAll(find(houseId, to).parts());
        }
        List<ValueDifference> differences = new ArrayList<>();
        for (PartKind kind : PartKind.values()) {
            Integer was = before.get(kind.key());
            Integer is = after.get(kind.key());
            if (!Objects.equals(was, is)) {
                differences.addAll(
                        RecordStore.between(kind, document(houseId, kind, was), document(houseId, kind, is)));
            }
        }
        return differences;
    }

    private @Nullable Record document(String houseId, PartKind kind, @Nullable Integer revision) {
        return revision == null
                ? null
                : revisions
                        .find(houseId, kind, revision)
                        .map(Revision::document)
                        .orElse(null);
    }

    private Baseline find(String houseId, String name) {
        return list(houseId).stream()
                .filter(baseline -> baseline.name().equals(name))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("baseline", name));
    }

    /** Baselines over HTTP. */
    @RestController
    @RequestMapping("/api/v1/houses/{house}/baselines")
    @Tag(name = "House record")
    static class Controller {
        private final Baselines baselines;

        Controller(Baselines baselines) {
            this.baselines = baselines;
        }

        /** A baseline to be kept of the record as it is now. */
        record BaselineDraft(String name, String reason) {}

        @GetMapping
        List<Baseline> listBaselines(@PathVariable String house) {
            return baselines.list(house);
        }

        @PostMapping
        @ResponseStatus(HttpStatus.CREATED)
        Baseline keepBaseline(@PathVariable String house, @RequestBody BaselineDraft draft) {
            return baselines.keep(house, draft.name(), draft.reason());
        }

        @GetMapping("/differences")
        List<ValueDifference> listBaselineDifferences(
                @PathVariable String house,
                @RequestParam String from,
                @RequestParam(required = false) @Nullable String to) {
            return baselines.differences(house, from, to);
        }
    }
}
