package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import oakum.portal.PortalClient.Answer;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.localdb.LocalPostgres;
import oakum.portal.localdb.LocalPostgres.Durability;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two portals work side by side on one database, also where both meet it empty. */
class TwoInstancesTest {
    private static final int ROUNDS = 12;

    private static Path folder;
    private static LocalPostgres database;
    private static List<PortalProcess> portals = List.of();
    private static PortalClient here;
    private static PortalClient there;

    @BeforeAll
    static void two_portals_start_at_once_on_an_empty_database() {
        folder = PortalProcess.folder("two-instances");
        database = LocalPostgres.start(folder.resolve("database"), 0, "oakum", "oakum", Durability.THROWAWAY, Map.of());
        database.createDatabaseIfAbsent("shared");
        Map<String, String> settings = Map.of(
                "OAKUM_DB_URL", database.jdbcUrl("shared"),
                "OAKUM_DB_USER", database.user(),
                "OAKUM_DB_PASSWORD", database.password());
        portals = List.of(
                new PortalProcess(folder.resolve("one"), settings), new PortalProcess(folder.resolve("two"), settings));
        portals.forEach(PortalProcess::launch);
        portals.forEach(PortalProcess::awaitUp);
        here = PortalClient.signIn(portals.get(0));
        there = here.at(portals.get(1));
    }

    @AfterAll
    static void nothing_stays_behind() {
        portals.forEach(PortalProcess::close);
        if (database != null) {
            database.close();
        }
        new PortalProcess(folder, Map.of()).close();
    }

    @Test
    void who_signed_in_at_one_is_signed_in_at_the_other_and_signs_out_of_both() {
        PortalClient one = PortalClient.signIn(portals.get(0));
        PortalClient other = one.at(portals.get(1));
        assertThat(other.get("/api/v1/me").json().get("account").asString()).isEqualTo("principal");
        assertThat(other.send("DELETE", "/api/v1/session", BodyPublishers.noBody())
                        .status())
                .isEqualTo(204);
        assertThat(one.get("/api/v1/me").status()).isEqualTo(401);
    }

    @Test
    void of_two_people_who_save_one_part_at_different_portals_one_is_told_to_read_again() throws Exception {
        makeHouse(here, "TWO-PARTS");
        String part = "/api/v1/houses/TWO-PARTS/parts/moisture";
        for (int round = 0; round < ROUNDS; round++) {
            Answer before = here.get(part);
            assertThat(before.status()).as(before.body()).isEqualTo(200);
            String saving = "{\"document\":" + before.json().get("document") + ",\"reason\":\"round " + round + "\"}";
            List<Answer> answers = atOnce(
                    () -> here.put(part, saving, "If-Match", before.eTag()),
                    () -> there.put(part, saving, "If-Match", before.eTag()));
            assertThat(answers.stream().map(Answer::status).sorted().toList())
                    .as("round %d: %s", round, answers)
                    .containsExactly(200, 412);
        }
    }

    @Test
    void one_idempotency_key_sent_to_both_has_one_effect_and_one_answer() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            String key = "round-" + round;
            String house = "TWO-KEYS-" + round;
            String body = "{\"id\":\"" + house + "\",\"house\":" + HouseFixtures.MEASURES + "}";
            List<Answer> answers = atOnce(() -> untilAnswered(here, body, key), () -> untilAnswered(there, body, key));
            assertThat(answers)
                    .as("round %d", round)
                    .allSatisfy(answer -> assertThat(answer.status()).isEqualTo(201));
            assertThat(answers.get(0).body()).isEqualTo(answers.get(1).body());
            assertThat(answers.stream().filter(Answer::replayed)).hasSize(1);
        }
    }

    @Test
    void the_same_readings_sent_to_both_are_kept_once() throws Exception {
        makeHouse(here, "TWO-READINGS");
        here.post(
                "/api/v1/houses/TWO-READINGS/sensors",
                "{\"key\":\"t\",\"label\":\"t\",\"property\":\"air-temperature\"}");
        for (int round = 0; round < ROUNDS; round++) {
            StringBuilder table = new StringBuilder("sensor,at,value\n");
            // each round begins a month of its own, so that both must make its partition
            for (int hour = 0; hour < 24; hour++) {
                table.append(String.format("t,2024-%02d-15T%02d:00:00Z,%d%n", round + 1, hour, hour));
            }
            List<Answer> answers =
                    atOnce(() -> readings(here, table.toString()), () -> readings(there, table.toString()));
            assertThat(answers)
                    .allSatisfy(answer ->
                            assertThat(answer.status()).as(answer.body()).isEqualTo(200));
            assertThat(answers.stream()
                            .map(answer -> answer.json().get("accepted").asInt())
                            .sorted()
                            .toList())
                    .containsExactly(0, 24);
        }
    }

    @Test
    void a_material_added_at_one_is_computed_with_at_the_other_and_added_at_both_is_there_once() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            String sheet = "{\"id\":\"two-wool\",\"label\":\"Wool\",\"conductivityWPerMK\":0.0" + (30 + round)
                    + ",\"resistanceFactors\":[],\"diffusionThicknesses\":[],\"sorption\":[],"
                    + "\"source\":\"sheet " + round + "\",\"status\":\"SEEN\"}";
            List<Answer> added =
                    atOnce(() -> here.post("/api/v1/materials", sheet), () -> there.post("/api/v1/materials", sheet));
            assertThat(added.stream().map(Answer::status).sorted().toList())
                    .as("%s", added)
                    .containsExactly(200, 201);
            String id = added.get(0).json().get("id").asString();
            assertThat(added.get(1).json().get("id").asString()).isEqualTo(id);
            Answer computed = there.post(
                    "/api/v1/calculations/assembly-resistance",
                    "{\"placement\":{\"kind\":\"WALL\"},\"layers\":[{\"id\":\"wool\",\"thicknessM\":0.1,\"materialId\":\""
                            + id + "\"}],\"fasteners\":[]}");
            assertThat(computed.status()).as(computed.body()).isEqualTo(200);
        }
        List<String> offered = there.get("/api/v1/materials")
                .json()
                .get("items")
                .valueStream()
                .filter(material -> material.get("label").asString().equals("Wool"))
                .map(material -> material.get("id").asString())
                .toList();
        assertThat(offered).hasSize(1);
    }

    private static Answer readings(PortalClient client, String table) {
        return client.send(
                "POST",
                "/api/v1/houses/TWO-READINGS/readings",
                BodyPublishers.ofString(table),
                "Content-Type",
                "text/csv");
    }

    private static void makeHouse(PortalClient client, String house) {
        Answer made =
                client.post("/api/v1/houses", "{\"id\":\"" + house + "\",\"house\":" + HouseFixtures.MEASURES + "}");
        assertThat(made.status()).as(made.body()).isEqualTo(201);
    }

    /** While the first has no answer yet, the second is told to ask again. */
    private static Answer untilAnswered(PortalClient client, String body, String key) throws InterruptedException {
        while (true) {
            Answer answer = client.post("/api/v1/houses", body, "Idempotency-Key", key);
            if (answer.status() != 409 || !answer.json().get("code").asString().equals("idempotency-key-in-use")) {
                return answer;
            }
            TimeUnit.MILLISECONDS.sleep(20);
        }
    }

    private static List<Answer> atOnce(Callable<Answer> one, Callable<Answer> other) throws Exception {
        CyclicBarrier start = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Future<Answer> first = threads.submit(() -> {
                start.await();
                return one.call();
            });
            Future<Answer> second = threads.submit(() -> {
                start.await();
                return other.call();
            });
            return List.of(first.get(), second.get());
        } finally {
            threads.shutdown();
        }
    }
}
