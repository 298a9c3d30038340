package oakum.portal.simulation;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Canonical;
import oakum.portal.calculation.AnswerJson;
import oakum.portal.houserecord.Bound;
import oakum.portal.houserecord.ProofOutput;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Relied;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Runs and their results in the database. */
@Repository
class SimulationRows {
    private static final TypeReference<LinkedHashMap<String, String>> TEXTS = new TypeReference<>() {};
    private static final TypeReference<LinkedHashMap<String, Integer>> NUMBERS = new TypeReference<>() {};
    private static final String RUN = """
            select r.id, r.house, r.title, r.calculation, r.version, r.comparison, r.bindings, r.relied, r.inputs,
                r.revisions, r.asked_by, r.asked_at, x.outputs, x.stopped
            from simulation.run r left join simulation.result x on x.run = r.id
            """;

    private final JdbcClient jdbc;
    private final JdbcTemplate template;
    private final JsonMapper json;

    SimulationRows(JdbcClient jdbc, JdbcTemplate template, JsonMapper json) {
        this.jdbc = jdbc;
        this.template = template;
        this.json = json;
    }

    /**
     * What was asked, and in short what came of it.
     *
     * @param comparison the runs that were asked for side by side share one; null for a run of its own
     * @param outputs null while there is no result; empty where the run could not go through
     * @param stopped where and when it could not go on
     */
    record Run(
            UUID id,
            String house,
            String title,
            String calculation,
            String version,
            @Nullable UUID comparison,
            List<Binding> bindings,
            List<Relied> relied,
            Map<String, String> inputs,
            Map<String, Integer> revisions,
            String askedBy,
            Instant askedAt,
            @Nullable List<ProofOutput> outputs,
            @Nullable String stopped) {

        Bound bound() {
            return new Bound(calculation, bindings, relied);
        }
    }

    void add(Run run) {
        jdbc.sql("""
                        insert into simulation.run (id, house, title, calculation, version, comparison, bindings, relied,
                            inputs, revisions, asked_by, asked_at)
                        values (:id, :house, :title, :calculation, :version, :comparison, :bindings::jsonb,
                            :relied::jsonb, :inputs::json, :revisions::jsonb, :by, :at)""")
                .param("id", run.id())
                .param("house", run.house())
                .param("title", run.title())
                .param("calculation", run.calculation())
                .param("version", run.version())
                .param("comparison", run.comparison(), Types.OTHER)
                .param("bindings", json.writeValueAsString(run.bindings()))
                .param("relied", json.writeValueAsString(run.relied()))
                .param("inputs", json.writeValueAsString(run.inputs()))
                .param("revisions", json.writeValueAsString(run.revisions()))
                .param("by", run.askedBy())
                .param("at", Timestamp.from(run.askedAt()))
                .update();
    }

    Optional<Run> find(UUID id) {
        return jdbc.sql(RUN + "where r.id = ?").param(id).query(this::run).optional();
    }

    /** Where a list goes on: after the run of this moment and id. */
    record After(Instant askedAt, UUID id) {}

    /** The newest first. */
    List<Run> list(String house, @Nullable UUID comparison, @Nullable After after, int most) {
        return jdbc.sql(RUN + """
                        where r.house = :house and (:comparison::uuid is null or r.comparison = :comparison::uuid)
                            and (:before::timestamptz is null or (r.asked_at, r.id) < (:before::timestamptz, :id::uuid))
                        order by r.asked_at desc, r.id desc limit :most""")
                .param("house", house)
                .param("comparison", comparison, Types.OTHER)
                .param("before", after == null ? null : Timestamp.from(after.askedAt()), Types.TIMESTAMP)
                .param("id", after == null ? null : after.id(), Types.OTHER)
                .param("most", most)
                .query(this::run)
                .list();
    }

    /** Keeps what came of a run, whole or not at all; once more after a crash. */
    @Transactional
    void keep(Run run, Simulated done) {
        Answer<?, ?> answer = done.answer();
        List<ProofOutput> outputs = answer == null
                ? List.of()
                : ProofOutput.ofCalculation(run.calculation(), run.inputs(), Canonical.flatten(answer.printed()));
        jdbc.sql("""
                        insert into simulation.result (run, answer, outputs, stopped, strip)
                        values (:run, :answer::jsonb, :outputs::jsonb, :stopped, :strip::jsonb)
                        on conflict (run) do update set answer = excluded.answer, outputs = excluded.outputs,
                            stopped = excluded.stopped, strip = excluded.strip""")
                .param("run", run.id())
                .param("answer", answer == null ? null : json.writeValueAsString(AnswerJson.of(answer)), Types.VARCHAR)
                .param("outputs", json.writeValueAsString(outputs))
                .param("stopped", done.stopped(), Types.VARCHAR)
                .param("strip", json.writeValueAsString(done.tape()))
                .update();
        jdbc.sql("delete from simulation.profile where run = ?").param(run.id()).update();
        template.batchUpdate(
                "insert into simulation.profile (run, day, profile) values (?, ?, ?::jsonb)",
                done.profiles().stream()
                        .map(p -> new Object[] {run.id(), p.day(), json.writeValueAsString(p)})
                        .toList());
    }

    /** The answer as JSON; null where there is none. */
    @Nullable
    JsonNode answer(UUID id) {
        return jdbc.sql("select answer from simulation.result where run = ? and answer is not null")
                .param(id)
                .query(String.class)
                .optional()
                .map(json::readTree)
                .orElse(null);
    }

    Optional<Tape> strip(UUID id) {
        return jdbc.sql("select strip from simulation.result where run = ?")
                .param(id)
                .query(String.class)
                .optional()
                .map(text -> json.readValue(text, Tape.class));
    }

    Optional<Tape.TapeProfile> profile(UUID id, int day) {
        return jdbc.sql("select profile from simulation.profile where run = ? and day = ?")
                .params(id, day)
                .query(String.class)
                .optional()
                .map(text -> json.readValue(text, Tape.TapeProfile.class));
    }

    private Run run(ResultSet row, int n) throws SQLException {
        String outputs = row.getString("outputs");
        return new Run(
                row.getObject("id", UUID.class),
                row.getString("house"),
                row.getString("title"),
                row.getString("calculation"),
                row.getString("version"),
                row.getObject("comparison", UUID.class),
                List.of(json.readValue(row.getString("bindings"), Binding[].class)),
                List.of(json.readValue(row.getString("relied"), Relied[].class)),
                json.readValue(row.getString("inputs"), TEXTS),
                json.readValue(row.getString("revisions"), NUMBERS),
                row.getString("asked_by"),
                row.getTimestamp("asked_at").toInstant(),
                outputs == null ? null : List.of(json.readValue(outputs, ProofOutput[].class)),
                row.getString("stopped"));
    }
}
