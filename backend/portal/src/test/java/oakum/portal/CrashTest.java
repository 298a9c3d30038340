package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.portal.PortalClient.Answer;
import oakum.portal.houserecord.HouseFixtures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/**
 * kill -9 in the middle of an import. What was acknowledged is there once; of what was not, a request is there as a whole
 * or not at all, and sending it again completes it. The portal runs in a process of its own on its own PostgreSQL, and
 * everything is asked of its API; the database is looked into only to know that an import is under way.
 */
class CrashTest {
    enum Killed {
        PORTAL,
        DATABASE,
        BOTH
    }

    private static final Instant START = Instant.parse("2025-01-01T00:00:00Z");
    private static final int BATCH = 2_000;
    /** Large enough to pass every buffer between the sender and the database. */
    private static final int LARGE = 100_000;

    private static final int SENDERS = 2;
    private static final int ACKNOWLEDGED_BEFORE = 10;

    private static PortalProcess portal;
    private static PortalClient client;

    @BeforeAll
    static void the_portal_runs_on_its_own_database() {
        Path folder = PortalProcess.folder("crash");
        portal = new PortalProcess(folder, Map.of());
        portal.launch();
        portal.awaitUp();
        client = PortalClient.signIn(portal);
    }

    @AfterAll
    static void nothing_stays_behind() {
        if (portal != null) {
            portal.close();
        }
    }

    /** Readings of one sensor, one a minute from {@code first} on. */
    private record Batch(String house, String sensor, int first, int size) {
        static float value(int number) {
            return Math.floorMod(number * 7_919, 400) / 8f;
        }

        static Instant at(int number) {
            return START.plusSeconds(60L * number);
        }

        String lines(int from, int to) {
            StringBuilder lines = new StringBuilder();
            for (int n = first + from; n < first + to; n++) {
                lines.append(sensor)
                        .append(',')
                        .append(at(n))
                        .append(',')
                        .append(value(n))
                        .append('\n');
            }
            return lines.toString();
        }

        Answer send() {
            return client.send(
                    "POST",
                    "/api/v1/houses/" + house + "/readings",
                    BodyPublishers.ofString(HEADER + lines(0, size)),
                    "Content-Type",
                    "text/csv");
        }

        /** Every reading that the portal has in the span of this batch is right; how many there are. */
        int kept() {
            int kept = 0;
            for (int from = first; from < first + size; from += 5_000) {
                int to = Math.min(first + size, from + 5_000);
                JsonNode series = series(from, to, to - from);
                assertThat(series.get("bucketS").asInt()).isEqualTo(60);
                for (JsonNode bucket : series.at("/series/0/buckets")) {
                    Instant at = Instant.parse(bucket.get("at").asString());
                    int number = (int) ((at.getEpochSecond() - START.getEpochSecond()) / 60);
                    assertThat(bucket.get("count").asInt())
                            .as("readings at %s", at)
                            .isEqualTo(1);
                    assertThat(bucket.get("mean").asDouble())
                            .as("value at %s", at)
                            .isEqualTo(value(number));
                    kept++;
                }
            }
            return kept;
        }

        private JsonNode series(int from, int to, int points) {
            Answer answer = client.get("/api/v1/houses/" + house + "/readings?sensor=" + sensor + "&from=" + at(from)
                    + "&to=" + at(to) + "&points=" + points);
            assertThat(answer.status()).as(answer.body()).isEqualTo(200);
            return answer.json();
        }
    }

    private static final String HEADER = "sensor,at,value\n";

    /** A batch on its way: what was answered, or nothing where the line went dead. */
    private record Sent(Batch batch, @Nullable Answer answer) {
        boolean acknowledged() {
            return answer != null && answer.status() == 200;
        }
    }

    @ParameterizedTest
    @EnumSource(Killed.class)
    void what_was_acknowledged_before_a_kill_is_there_once_and_nothing_is_there_half(Killed killed) throws Exception {
        String house = "CRASH-" + killed.name();
        makeHouse(house);
        Batch large = new Batch(house, "large", 0, LARGE);
        AtomicInteger acknowledged = new AtomicInteger();
        ExecutorService threads = Executors.newCachedThreadPool();
        List<Sent> sent = new ArrayList<>();
        Sent half;
        try {
            CompletableFuture<Void> kill = new CompletableFuture<>();
            Future<Sent> halfSent = threads.submit(() -> new Sent(large, sendHalf(large, threads, kill)));
            PortalProcess.await("the large batch is being copied in", CrashTest::copying);
            List<Future<List<Sent>>> senders = new ArrayList<>();
            for (int sender = 0; sender < SENDERS; sender++) {
                String sensor = "s" + sender;
                senders.add(threads.submit(() -> sendUntilRefused(house, sensor, acknowledged)));
            }
            PortalProcess.await("batches are acknowledged", () -> acknowledged.get() >= ACKNOWLEDGED_BEFORE);
            assertThat(halfSent.isDone()).isFalse();

            kill(killed);
            kill.complete(null);
            half = halfSent.get();
            for (Future<List<Sent>> sender : senders) {
                sent.addAll(sender.get());
            }
        } finally {
            threads.shutdownNow();
        }
        assertAnswersWhileAway(killed, sent, half);
        restart(killed);

        for (Sent one : sent) {
            int kept = one.batch().kept();
            if (one.acknowledged()) {
                assertThat(kept).as("acknowledged: %s", one.batch()).isEqualTo(BATCH);
            } else {
                assertThat(kept).as("not acknowledged: %s", one.batch()).isIn(0, BATCH);
            }
        }
        assertThat(large.kept()).isZero();

        for (Sent one : sent) {
            sendAgain(one.batch(), one.acknowledged());
        }
        sendAgain(large, false);
        for (Sent one : sent) {
            assertThat(one.batch().kept()).isEqualTo(BATCH);
        }
        assertThat(large.kept()).isEqualTo(LARGE);
        assertHoursAgree(large);
    }

    private static void makeHouse(String house) {
        Answer made =
                client.post("/api/v1/houses", "{\"id\":\"" + house + "\",\"house\":" + HouseFixtures.MEASURES + "}");
        assertThat(made.status()).as(made.body()).isEqualTo(201);
        for (String sensor : List.of("large", "s0", "s1")) {
            Answer added = client.post(
                    "/api/v1/houses/" + house + "/sensors",
                    "{\"key\":\"" + sensor + "\",\"label\":\"" + sensor + "\",\"property\":\"air-temperature\"}");
            assertThat(added.status()).as(added.body()).isEqualTo(201);
        }
    }

    /** Sends nine tenths of a body, waits for the kill, and goes on if anybody still listens. */
    private static @Nullable Answer sendHalf(Batch batch, ExecutorService threads, CompletableFuture<Void> kill)
            throws IOException {
        PipedInputStream body = new PipedInputStream(1 << 16);
        PipedOutputStream out = new PipedOutputStream(body);
        threads.execute(() -> writeHalf(batch, out, kill));
        try {
            return client.send(
                    "POST",
                    "/api/v1/houses/" + batch.house() + "/readings",
                    BodyPublishers.ofInputStream(() -> body),
                    "Content-Type",
                    "text/csv");
        } catch (UncheckedIOException e) {
            return null;
        }
    }

    private static void writeHalf(Batch batch, PipedOutputStream body, CompletableFuture<Void> kill) {
        int most = batch.size() / 10 * 9;
        try (body) {
            body.write((HEADER + batch.lines(0, most)).getBytes(StandardCharsets.UTF_8));
            body.flush();
            kill.join();
            body.write(batch.lines(most, batch.size()).getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            assertThat(kill).as("the line goes dead only with the kill").isDone();
        }
    }

    private static List<Sent> sendUntilRefused(String house, String sensor, AtomicInteger acknowledged) {
        List<Sent> sent = new ArrayList<>();
        while (true) {
            Batch batch = new Batch(house, sensor, sent.size() * BATCH, BATCH);
            Answer answer;
            try {
                answer = batch.send();
            } catch (UncheckedIOException e) {
                answer = null;
            }
            Sent one = new Sent(batch, answer);
            sent.add(one);
            if (!one.acknowledged()) {
                return sent;
            }
            acknowledged.incrementAndGet();
        }
    }

    private static boolean copying() {
        try (var database = DriverManager.getConnection(portal.databaseUrl(), "oakum", "oakum-local");
                var ask = database.createStatement();
                var rows =
                        ask.executeQuery("select 1 from pg_stat_progress_copy where tuples_processed > " + LARGE / 2)) {
            return rows.next();
        } catch (SQLException e) {
            throw new AssertionError("the portal's own database does not answer", e);
        }
    }

    private static void kill(Killed killed) {
        if (killed != Killed.DATABASE) {
            portal.kill();
            assertThat(portal.database())
                    .as("the server that the portal left behind")
                    .isNotEmpty();
        }
        if (killed != Killed.PORTAL) {
            portal.killDatabase();
        }
    }

    /** A portal whose database dies says so, in a form that a machine understands; a dead portal says nothing. */
    private static void assertAnswersWhileAway(Killed killed, List<Sent> sent, Sent half) {
        List<Answer> answers = new ArrayList<>();
        sent.stream()
                .filter(one -> !one.acknowledged())
                .flatMap(one -> Optional.ofNullable(one.answer()).stream())
                .forEach(answers::add);
        Optional.ofNullable(half.answer()).ifPresent(answers::add);
        if (killed == Killed.DATABASE) {
            assertThat(answers).as("the large batch and one of each sender").hasSize(1 + SENDERS);
        }
        for (Answer answer : answers) {
            assertThat(answer.status()).as(answer.body()).isEqualTo(503);
            assertThat(answer.contentType()).startsWith("application/problem+json");
            assertThat(answer.json().get("code").asString()).isEqualTo("database-away");
        }
    }

    private static void restart(Killed killed) {
        if (killed == Killed.DATABASE) {
            assertThat(portal.alive()).isTrue();
        } else {
            portal.launch();
            portal.awaitUp();
        }
        // the session outlives both, being in the database; a portal that lost its database takes it up again
        PortalProcess.await("the portal answers", () -> {
            Answer answer = client.get("/api/v1/me");
            assertThat(answer.status()).as(answer.body()).isIn(200, 503);
            return answer.status() == 200;
        });
    }

    private static void sendAgain(Batch batch, boolean known) {
        Answer answer = batch.send();
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        JsonNode counts = answer.json();
        assertThat(counts.get("refused").asInt()).isZero();
        assertThat(counts.get("accepted").asInt() + counts.get("alreadyKnown").asInt())
                .isEqualTo(batch.size());
        assertThat(counts.get("accepted").asInt()).isIn(known ? List.of(0) : List.of(0, batch.size()));
    }

    /** The hourly values count what the readings count. */
    private static void assertHoursAgree(Batch batch) {
        JsonNode series = batch.series(0, batch.size(), batch.size() / 60);
        assertThat(series.get("source").asString()).isEqualTo("hours");
        int count = 0;
        for (JsonNode bucket : series.at("/series/0/buckets")) {
            count += bucket.get("count").asInt();
        }
        assertThat(count).isEqualTo(batch.size());
    }
}
