package oakum.portal.http;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** The kept answers in the database; each statement stands for itself, beside the transaction of the act. */
@Repository
class KeptAnswers {
    /** Long enough for a client that was offline over a weekend. */
    static final Duration KEPT_FOR = Duration.ofDays(7);

    /** Longer than any request takes; after it a claim without answer and without act is free. */
    static final Duration CLAIMED_FOR = Duration.ofMinutes(2);

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    KeptAnswers(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /** An answer; its status is null while there is none. Never compared as a whole. */
    @SuppressWarnings("ArrayRecordComponent")
    record Kept(
            byte[] requestHash, @Nullable Integer status, boolean acted, Map<String, String> headers, byte[] body) {}

    /** Takes the key and gives the claim on it; empty where it is taken already. */
    Optional<UUID> begin(String person, String key, byte[] requestHash) {
        Instant now = clock.instant();
        // the portal was killed before it did anything under this claim
        jdbc.sql("""
                        delete from http.kept_answer
                        where person = ? and idempotency_key = ? and status is null and acted_at is null and asked_at < ?
                        """)
                .params(person, key, Timestamp.from(now.minus(CLAIMED_FOR)))
                .update();
        UUID claim = UUID.randomUUID();
        int taken = jdbc.sql("""
                        insert into http.kept_answer (person, idempotency_key, request_hash, asked_at, claim)
                        values (?, ?, ?, ?, ?) on conflict do nothing
                        """)
                .params(person, key, requestHash, Timestamp.from(now), claim)
                .update();
        return taken == 1 ? Optional.of(claim) : Optional.empty();
    }

    void keep(UUID claim, int status, Map<String, String> headers, byte[] body) {
        jdbc.sql("update http.kept_answer set status = ?, headers = ?::jsonb, body = ? where claim = ?")
                .params(status, json.writeValueAsString(headers), body, claim)
                .update();
    }

    /** Frees the key of a request that was refused. */
    void release(UUID claim) {
        jdbc.sql("delete from http.kept_answer where claim = ? and status is null and acted_at is null")
                .params(claim)
                .update();
    }

    Optional<Kept> find(String person, String key) {
        return jdbc.sql("""
                        select request_hash, status, acted_at, headers, body from http.kept_answer
                        where person = ? and idempotency_key = ?
                        """)
                .params(person, key)
                .query((row, n) -> {
                    String headers = row.getString("headers");
                    byte[] body = row.getBytes("body");
                    return new Kept(
                            row.getBytes("request_hash"),
                            row.getObject("status", Integer.class),
                            row.getTimestamp("acted_at") != null,
                            headers == null
                                    ? Map.of()
                                    : json.readValue(headers, new TypeReference<Map<String, String>>() {}),
                            Objects.requireNonNullElse(body, new byte[0]));
                })
                .optional();
    }

    void forgetOld() {
        jdbc.sql("delete from http.kept_answer where asked_at < ?")
                .params(Timestamp.from(clock.instant().minus(KEPT_FOR)))
                .update();
    }

    /** Old answers are forgotten once a day, by one instance. */
    @Configuration(proxyBeanMethods = false)
    static class Forgetting {
        @Bean
        RecurringTask<Void> forgetOldAnswers(KeptAnswers answers) {
            return Tasks.recurring("forget-old-answers", Schedules.fixedDelay(Duration.ofDays(1)))
                    .execute((instance, context) -> answers.forgetOld());
        }
    }
}
