package oakum.portal.job;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Jobs in the database; every statement leaves a job in a state that another instance can go on from. */
@Repository
class JobStore {
    private static final String SHOWN = """
            id, kind, house, title, asked_by, asked_at, state, done_fraction, step, started_at, ended_at, failure""";

    private final JdbcClient jdbc;

    JobStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a runner needs to begin. */
    record Begun(String kind, String house, String request, int attempts) {}

    void add(Job job, String request) {
        jdbc.sql("""
                        insert into job.job (id, kind, house, title, request, asked_by, asked_at, state)
                        values (?, ?, ?, ?, ?, ?, ?, 'WAITING')""")
                .params(
                        job.id(),
                        job.kind(),
                        job.house(),
                        job.title(),
                        request,
                        job.askedBy(),
                        Timestamp.from(job.askedAt()))
                .update();
    }

    Optional<Job> find(UUID id) {
        return jdbc.sql("select " + SHOWN + " from job.job where id = ?")
                .param(id)
                .query(JobStore::job)
                .optional();
    }

    List<Job> list(String house, int most) {
        return jdbc.sql("select " + SHOWN + " from job.job where house = ? order by asked_at desc, id limit ?")
                .params(house, most)
                .query(JobStore::job)
                .list();
    }

    Optional<String> result(UUID id) {
        return jdbc.sql("select result from job.job where id = ? and state = 'DONE'")
                .param(id)
                .query(String.class)
                .optional();
    }

    Optional<String> request(UUID id) {
        return jdbc.sql("select request from job.job where id = ?")
                .param(id)
                .query(String.class)
                .optional();
    }

    /** Takes the job up, also again after a crash; empty where it has ended meanwhile. */
    Optional<Begun> begin(UUID id, Instant now) {
        return jdbc.sql("""
                        update job.job set state = 'RUNNING', started_at = ?, attempts = attempts + 1, done_fraction = 0
                        where id = ? and state in ('WAITING', 'RUNNING') and not cancel_asked
                        returning kind, house, request, attempts""")
                .params(Timestamp.from(now), id)
                .query((row, n) -> new Begun(
                        row.getString("kind"),
                        row.getString("house"),
                        row.getString("request"),
                        row.getInt("attempts")))
                .optional();
    }

    /** Notes how far it is; answers whether to go on. */
    boolean goOn(UUID id, double fraction, String step) {
        return jdbc.sql("""
                        update job.job set done_fraction = ?, step = ? where id = ? and state = 'RUNNING'
                        returning not cancel_asked""")
                .params(Math.max(0, Math.min(1, fraction)), step, id)
                .query(Boolean.class)
                .optional()
                .orElse(false);
    }

    void end(UUID id, JobState state, @Nullable String failure, @Nullable String result, Instant now) {
        jdbc.sql("""
                        update job.job set state = :state, failure = :failure, result = :result, ended_at = :now,
                            done_fraction = case when :state = 'DONE' then 1 else done_fraction end
                        where id = :id and state in ('WAITING', 'RUNNING')""")
                .param("state", state.name())
                .param("failure", failure, java.sql.Types.VARCHAR)
                .param("result", result, java.sql.Types.VARCHAR)
                .param("now", Timestamp.from(now))
                .param("id", id)
                .update();
    }

    void waitAgain(UUID id) {
        jdbc.sql("update job.job set state = 'WAITING', attempts = attempts - 1 where id = ? and state = 'RUNNING'")
                .param(id)
                .update();
    }

    /** Asks a job to stop; one that nobody runs is ended at once. False where it had ended already. */
    boolean cancel(UUID id, Instant now) {
        return jdbc.sql("""
                        update job.job set cancel_asked = true,
                            ended_at = case when state = 'WAITING' then ?::timestamptz end,
                            state = case when state = 'WAITING' then 'CANCELLED' else state end
                        where id = ? and state in ('WAITING', 'RUNNING')""").params(Timestamp.from(now), id).update() == 1;
    }

    private static Job job(ResultSet row, int n) throws SQLException {
        return new Job(
                row.getObject("id", UUID.class),
                row.getString("kind"),
                row.getString("house"),
                row.getString("title"),
                row.getString("asked_by"),
                row.getTimestamp("asked_at").toInstant(),
                JobState.valueOf(row.getString("state")),
                row.getDouble("done_fraction"),
                row.getString("step"),
                instant(row, "started_at"),
                instant(row, "ended_at"),
                row.getString("failure"),
                List.of());
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
