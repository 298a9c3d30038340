package oakum.portal.reading;

import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import oakum.portal.http.Problem;
import oakum.portal.http.TextBody;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.PGCopyOutputStream;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * Takes readings in. One request is one transaction: its body streams into a temporary table, which is then merged at
 * once. Nothing of a request that fails is kept, and what is answered is committed; so a sender that heard no answer
 * sends the same again, and nothing doubles.
 */
@Service
public class Ingestion {
    /** How many refusals of one request are kept with their text; all are counted. */
    static final int MOST_REJECTS = 10_000;

    private static final int MOST_ANSWERED = 100;
    private static final Instant POSTGRES_EPOCH = Instant.parse("2000-01-01T00:00:00Z");
    private static final byte[] COPY_SIGNATURE = {
        'P', 'G', 'C', 'O', 'P', 'Y', '\n', (byte) 0xff, '\r', '\n', 0, 0, 0, 0, 0, 0, 0, 0, 0
    };

    private final JdbcTemplate template;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Partitions partitions;
    private final Sensors sensors;
    private final Access access;
    private final Audit audit;
    private final Clock clock;
    private final JsonMapper json;
    private final long limitBytes;
    /** A request holds two database connections while it makes a partition; they must not run out. */
    private final Semaphore places = new Semaphore(4);

    Ingestion(
            JdbcTemplate template,
            JdbcClient jdbc,
            PlatformTransactionManager transactions,
            Partitions partitions,
            Sensors sensors,
            Access access,
            Audit audit,
            Clock clock,
            JsonMapper json,
            @Value("${oakum.reading.body-limit-bytes:200000000}") long limitBytes) {
        this.template = template;
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
        this.partitions = partitions;
        this.sensors = sensors;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
        this.json = json;
        this.limitBytes = limitBytes;
    }

    /** In which form the readings come. */
    public enum Form {
        DELIMITED,
        JSON_LINES
    }

    /**
     * Takes one body in.
     *
     * @param announcedBytes the length the sender gave, or -1
     * @param map how a delimited table is read
     * @throws Problem 400 where the body as a whole cannot be read, 413 where it is over the limit; nothing is kept then
     */
    public ReadingBatch take(
            String house, Form form, InputStream body, long announcedBytes, Charset charset, ColumnMap map) {
        access.require(Permission.WRITE_READINGS, house);
        if (announcedBytes > limitBytes) {
            throw TextBody.tooLarge(limitBytes);
        }
        Map<String, KnownSensor> known = sensors.known(house);
        TableForm table = TableForm.of(map, known);
        admit();
        try {
            return Objects.requireNonNull(transaction.execute(status -> {
                Incoming incoming = copy(out -> {
                    Reader text = TextBody.open(body, limitBytes, charset);
                    if (form == Form.DELIMITED) {
                        new DelimitedText(table, known, out, clock).read(text);
                    } else {
                        new JsonLines(table, known, out, clock, json).read(text);
                    }
                });
                return merge(house, incoming);
            }));
        } catch (UncheckedIOException | de.siegmar.fastcsv.reader.CsvParseException e) {
            Problem problem = TextBody.problem(e, limitBytes);
            throw problem != null
                    ? problem
                    : new Problem(
                            HttpStatus.BAD_REQUEST,
                            "body-malformed",
                            "The body could not be read to its end: a quotation mark is never closed, or the sending broke off. Nothing of it was kept.");
        } finally {
            places.release();
        }
    }

    private void admit() {
        try {
            if (places.tryAcquire(20, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        throw new Problem(
                HttpStatus.SERVICE_UNAVAILABLE,
                "busy",
                "Too many files are coming in at once. Nothing of this one was kept; send it again in a minute.");
    }

    /** Fills the rows of a request. */
    private interface Source {
        void into(Incoming out) throws IOException;
    }

    /** The rows of a request on their way into the temporary table. */
    private static final class Incoming implements Rows {
        private final DataOutputStream out;
        private final List<Object[]> rejects = new ArrayList<>();
        private long readings;
        private long refused;
        private long empty;

        Incoming(DataOutputStream out) {
            this.out = out;
        }

        @Override
        public void reading(long line, int sensorId, Instant at, double value) throws IOException {
            readings++;
            out.writeShort(4);
            out.writeInt(8);
            out.writeLong(line);
            out.writeInt(8);
            out.writeLong(POSTGRES_EPOCH.until(at, ChronoUnit.MICROS));
            out.writeInt(4);
            out.writeInt(sensorId);
            out.writeInt(4);
            // minus zero would be another value than zero when it comes again
            out.writeFloat((float) value + 0f);
        }

        @Override
        public void refuse(long line, String field, String value, String reason, String text) {
            refused++;
            if (rejects.size() < MOST_REJECTS) {
                rejects.add(new Object[] {line, field, printable(value), reason, printable(text)});
            }
        }

        @Override
        public void empty() {
            empty++;
        }

        /** PostgreSQL's text takes every character but this one. */
        private static String printable(String text) {
            return text.replace('\0', '\uFFFD');
        }
    }

    private Incoming copy(Source source) {
        template.execute(
                "create temporary table incoming (line bigint, at timestamptz, sensor_id int, value real) on commit drop");
        return Objects.requireNonNull(template.execute((ConnectionCallback<Incoming>) connection -> {
            try {
                return copy(connection, source);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }));
    }

    private static Incoming copy(Connection connection, Source source) throws SQLException, IOException {
        PGCopyOutputStream copy = new PGCopyOutputStream(
                connection.unwrap(PGConnection.class), "copy incoming from stdin (format binary)", 1 << 16);
        try {
            DataOutputStream out = new DataOutputStream(copy);
            out.write(COPY_SIGNATURE);
            Incoming incoming = new Incoming(out);
            source.into(incoming);
            out.writeShort(-1);
            copy.endCopy();
            return incoming;
        } finally {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        }
    }

    private ReadingBatch merge(String house, Incoming incoming) {
        partitions.ensure(months());
        // one merge of a house at a time: two that overlap would wait for each other's rows in different order
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended('reading.house.' || ?, 0))")
                .param(house)
                .query()
                .singleRow();
        jdbc.sql("set local work_mem = '128MB'").update();
        jdbc.sql("analyze incoming").update();
        int accepted = jdbc.sql("""
                        insert into reading.reading (at, sensor_id, value)
                        select at, sensor_id, value from incoming order by sensor_id, at, line
                        on conflict do nothing""").update();
        long others = 0;
        List<Object[]> rejects = incoming.rejects;
        if (accepted < incoming.readings) {
            others = otherValues();
            rejects.addAll(otherValues(MOST_REJECTS - rejects.size()));
        }
        if (accepted > 0) {
            rollUp();
        }
        return keep(
                house,
                incoming.readings + incoming.refused,
                accepted,
                incoming.readings - accepted - others,
                incoming.refused + others,
                incoming.empty,
                rejects);
    }

    private List<YearMonth> months() {
        return jdbc.sql("select distinct date_trunc('month', at, 'UTC') as month from incoming order by month")
                .query((row, n) ->
                        YearMonth.from(row.getTimestamp("month").toInstant().atOffset(ZoneOffset.UTC)))
                .list();
    }

    private long otherValues() {
        return jdbc.sql("""
                        select count(*) from incoming i join reading.reading r
                            on r.sensor_id = i.sensor_id and r.at = i.at
                        where r.value <> i.value""").query(Long.class).single();
    }

    private List<Object[]> otherValues(int most) {
        return jdbc.sql("""
                        select i.line, s.key, i.value, r.value as known
                        from incoming i join reading.reading r on r.sensor_id = i.sensor_id and r.at = i.at
                            join reading.sensor s on s.id = i.sensor_id
                        where r.value <> i.value order by i.line limit ?""")
                .param(most)
                .query((row, n) -> new Object[] {
                    row.getLong("line"),
                    row.getString("key"),
                    row.getString("value"),
                    "already known with another value, " + row.getString("known"),
                    ""
                })
                .list();
    }

    /**
     * Writes the hours anew that the accepted readings touched: for each sensor and month from the first touched hour to
     * the last, in one statement.
     */
    private void rollUp() {
        jdbc.sql("""
                        insert into reading.hour (hour, mean, sensor_id, count, min, max, calculated_at)
                        select date_trunc('hour', r.at, 'UTC'), avg(r.value::float8), r.sensor_id, count(*),
                            min(r.value), max(r.value), ?
                        from (
                            select sensor_id, date_trunc('hour', min(at), 'UTC') as first,
                                date_trunc('hour', max(at), 'UTC') + interval '1 hour' as after
                            from incoming group by sensor_id, date_trunc('month', at, 'UTC')
                        ) touched
                        join reading.reading r
                            on r.sensor_id = touched.sensor_id and r.at >= touched.first and r.at < touched.after
                        group by 1, r.sensor_id
                        on conflict (sensor_id, hour) do update set mean = excluded.mean, count = excluded.count,
                            min = excluded.min, max = excluded.max, calculated_at = excluded.calculated_at""").param(java.sql.Timestamp.from(clock.instant())).update();
    }

    private ReadingBatch keep(
            String house,
            long received,
            long accepted,
            long alreadyKnown,
            long refused,
            long empty,
            List<Object[]> rejects) {
        UUID batch = UUID.randomUUID();
        jdbc.sql("insert into reading.batch values (?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        batch,
                        house,
                        access.caller().account(),
                        java.sql.Timestamp.from(clock.instant()),
                        received,
                        accepted,
                        alreadyKnown,
                        refused,
                        empty)
                .update();
        List<Object[]> byLine = rejects.stream()
                .sorted((a, b) -> Long.compare((Long) a[0], (Long) b[0]))
                .toList();
        List<Object[]> numbered = new ArrayList<>();
        for (Object[] reject : byLine) {
            numbered.add(new Object[] {batch, numbered.size(), reject[0], reject[1], reject[2], reject[3], reject[4]});
        }
        template.batchUpdate("insert into reading.reject values (?, ?, ?, ?, ?, ?, ?)", numbered);
        audit.record(
                "readings-brought",
                house,
                accepted + " readings accepted, " + alreadyKnown + " already known, " + refused + " refused.");
        return new ReadingBatch(
                batch,
                received,
                accepted,
                alreadyKnown,
                refused,
                empty,
                byLine.stream()
                        .limit(MOST_ANSWERED)
                        .map(r -> new ReadingBatch.Refusal((Long) r[0], (String) r[1], (String) r[2], (String) r[3]))
                        .toList(),
                "/api/v1/houses/" + house + "/readings/rejects?batch=" + batch);
    }

    /** One page of what was refused. */
    public record Rejects(
            UUID batch, List<Reject> items, @Nullable Integer next) {}

    /** One refusal with its line as it came. */
    public record Reject(int number, long line, String field, String value, String reason, String text) {}

    /**
     * What was refused of a batch, 500 at a time.
     *
     * @param after the {@code next} of the page before, or -1
     */
    public Rejects rejects(String house, UUID batch, int after) {
        access.require(Permission.VIEW_READINGS, house);
        boolean there = jdbc.sql("select exists (select 1 from reading.batch where id = ? and house = ?)")
                .params(batch, house)
                .query(Boolean.class)
                .single();
        if (!there) {
            throw Problem.notFound("batch", batch);
        }
        List<Reject> items = jdbc.sql(
                        "select * from reading.reject where batch = ? and number > ? order by number limit 500")
                .params(batch, after)
                .query((row, n) -> new Reject(
                        row.getInt("number"),
                        row.getLong("line"),
                        row.getString("field"),
                        row.getString("value"),
                        row.getString("reason"),
                        row.getString("text")))
                .list();
        return new Rejects(
                batch,
                items,
                items.size() < 500 ? null : items.get(items.size() - 1).number());
    }
}
