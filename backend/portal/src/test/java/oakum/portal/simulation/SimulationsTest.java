package oakum.portal.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.asyncDispatch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import oakum.physics.weather.BundledYears;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

@PortalTest
class SimulationsTest {
    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    private String house;

    @BeforeEach
    void a_house() {
        house = HouseFixtures.house(houses);
    }

    @Test
    void a_run_answers_as_the_calculation_itself_does() throws Exception {
        String inputs = inputs(21);
        ResultActions asked = ask("{\"title\":\"Living room\",\"calculation\":\"moist-air-state\",\"inputs\":" + inputs
                        + "}")
                .andExpect(status().isAccepted());
        JsonNode job = json(asked);
        asked.andExpect(result -> assertThat(result.getResponse().getHeader("Location"))
                .isEqualTo("/api/v1/houses/" + house + "/jobs/" + job.get("id").asString()));

        JsonNode done = ended(job);

        assertThat(done.at("/simulation/state").asString()).isEqualTo("DONE");
        JsonNode direct = json(http.perform(post("/api/v1/calculations/moist-air-state")
                .with(SignedIn.as(Role.DESIGNER))
                .contentType("application/json")
                .content(inputs)));
        assertThat(done.get("answer")).isEqualTo(direct);
        assertThat(done.at("/simulation/outputs").size()).isPositive();
        assertThat(done.at("/simulation/actions").toString()).isEqualTo("[\"keep-as-proof\"]");
    }

    @Test
    void its_days_are_looked_through_one_by_one() throws Exception {
        String id = ended(json(ask(bound("Tape", "21")))).at("/simulation/id").asString();

        JsonNode tape = json(look("/" + id + "/tape"));
        assertThat(tape.get("days").size()).isEqualTo(30);
        assertThat(tape.get("partial").asBoolean()).isFalse();
        assertThat(json(look("/" + id + "/tape?fromDay=5&toDay=9")).get("days").size())
                .isEqualTo(5);
        JsonNode day = json(look("/" + id + "/tape/7"));
        assertThat(day.at("/waterKgPerM3/0").asDouble()).isEqualTo(8.0);
        look("/" + id + "/tape/30")
                .andExpect(status().isNotFound())
                .andExpect(jsonPath("$.detail").value("Day 30 has no profile; days 0 to 29 have one."));
    }

    @Test
    void a_wall_is_followed_for_a_year_day_by_day() throws Exception {
        JsonNode run = ended(json(ask("{\"title\":\"North wall\",\"calculation\":\"wall-moisture\",\"inputs\":"
                        + """
                {"layers": [
                   {"id": "gypsum", "materialId": "gypsum-board", "thicknessM": 0.013},
                   {"id": "fill", "materialId": "cellulose-dense", "thicknessM": 0.305},
                   {"id": "plywood", "materialId": "plywood", "thicknessM": 0.012}],
                 "cut": "THROUGH_FILL", "azimuthDeg": 0, "tiltDeg": 90, "absorptanceFraction": 0.6,
                 "weatherHash": "%s", "indoor": "CONSTANT", "indoorC": 20, "indoorHumidityFraction": 0.4,
                 "indoorCurve": [], "rainEntryFraction": 0, "startHumidityFraction": 0.8, "wetStarts": [],
                 "startMonth": 10, "years": 1}}""".formatted(BundledYears.coldA().contentHash()))
                .andExpect(status().isAccepted())));

        assertThat(run.at("/simulation/state").asString()).as(run.toString()).isEqualTo("DONE");
        assertThat(run.at("/answer/printed/layers").size()).isEqualTo(3);
        String id = run.at("/simulation/id").asString();
        JsonNode tape = json(look("/" + id + "/tape"));
        assertThat(tape.get("days").size()).isEqualTo(365);
        assertThat(tape.at("/days/0/date").asString()).endsWith("-10-01");
        assertThat(tape.get("planes").size())
                .isEqualTo(tape.at("/days/0/planeC").size())
                .isEqualTo(6);
        JsonNode day = json(look("/" + id + "/tape/100"));
        assertThat(day.get("hourOfDay").asInt()).isEqualTo(6);
        assertThat(day.get("temperatureC").size())
                .isEqualTo(day.get("depthM").size())
                .isGreaterThan(20);
    }

    @Test
    void a_run_that_cannot_go_on_says_where_and_when_and_keeps_the_days_before() throws Exception {
        JsonNode stopped = ended(json(ask(bound("Stops", "31"))));

        assertThat(stopped.at("/simulation/state").asString()).isEqualTo("FAILED");
        assertThat(stopped.at("/simulation/failure").asString()).isEqualTo("It stopped in the room on day 12.");
        assertThat(stopped.at("/simulation/partial").asBoolean()).isTrue();
        assertThat(stopped.path("answer").isMissingNode()
                        || stopped.get("answer").isNull())
                .isTrue();
        assertThat(stopped.at("/simulation/outputs").size()).isZero();
        assertThat(stopped.at("/simulation/actions").size()).isZero();
        JsonNode tape = json(look("/" + stopped.at("/simulation/id").asString() + "/tape"));
        assertThat(tape.get("days").size()).isEqualTo(12);
        assertThat(tape.get("partial").asBoolean()).isTrue();
    }

    @Test
    void a_cancelled_run_leaves_nothing() throws Exception {
        JsonNode job = json(ask(bound("Long", "32")));
        String id = job.get("id").asString();
        await().atMost(Duration.ofSeconds(20))
                .until(() -> json(look("/" + id)).at("/simulation/doneFraction").asDouble() > 0);

        http.perform(post("/api/v1/houses/" + house + "/jobs/" + id + "/cancellation")
                        .with(SignedIn.as(Role.DESIGNER)))
                .andExpect(status().isOk());

        assertThat(ended(job).at("/simulation/state").asString()).isEqualTo("CANCELLED");
        look("/" + id + "/tape")
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("job-has-no-result"));
    }

    @Test
    void its_progress_is_watched_as_server_sent_events() throws Exception {
        String id = json(ask(bound("Watched", "21"))).get("id").asString();

        MvcResult stream = http.perform(get("/api/v1/houses/" + house + "/jobs/" + id + "/progress")
                        .with(SignedIn.as(Role.OWNER, house)))
                .andReturn();
        stream.getAsyncResult(20_000);
        String told = http.perform(asyncDispatch(stream))
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);

        assertThat(told).contains("event:job").contains("\"state\":\"DONE\"");
    }

    @Test
    void it_says_which_of_its_inputs_have_changed_since() throws Exception {
        String id =
                ended(json(ask(bound("Design day", null)))).at("/simulation/id").asString();
        assertThat(json(look("/" + id)).at("/simulation/inputsChanged").size()).isZero();

        JsonNode now = json(http.perform(get("/api/v1/houses/" + house).with(SignedIn.as(Role.DESIGNER))));
        ObjectNode measures = (ObjectNode) now.deepCopy();
        measures.remove(List.of("id", "stageLabel", "version", "actions"));
        measures.put("designOutdoorC", -20);
        ObjectNode saving = JsonMapper.shared().createObjectNode().put("reason", "New design day");
        saving.set("house", measures);
        http.perform(put("/api/v1/houses/" + house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"" + now.get("version").asString() + "\"")
                        .contentType("application/json")
                        .content(saving.toString()))
                .andExpect(status().isOk());

        JsonNode run = json(look("/" + id)).get("simulation");
        assertThat(run.at("/revisions/house").asInt()).isEqualTo(1);
        assertThat(run.at("/inputsChanged/0/path").asString()).isEqualTo("house.designOutdoorC");
        assertThat(run.at("/inputsChanged/0/old").asString()).isEqualTo("-25");
        assertThat(run.at("/inputsChanged/0/new").asString()).isEqualTo("-20");
    }

    @Test
    void a_proof_kept_with_the_same_bindings_has_the_same_copy_code() throws Exception {
        JsonNode run = ended(json(ask(bound("Design day", null))));
        ObjectNode proof = JsonMapper.shared()
                .createObjectNode()
                .put("kind", "COMPUTED")
                .put("key", "designDayAir")
                .put("title", "Air of the design day")
                .put("calculation", "moist-air-state")
                .put("reason", "kept from a run");
        proof.set("bindings", run.at("/simulation/bindings"));

        http.perform(post("/api/v1/houses/" + house + "/proofs")
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType("application/json")
                        .content(proof.toString()))
                .andExpect(status().isCreated())
                .andExpect(
                        jsonPath("$.copyCode").value(run.at("/answer/copyCode").asString()));
    }

    @Test
    void trials_stand_side_by_side() throws Exception {
        JsonNode jobs = json(http.perform(post("/api/v1/houses/" + house + "/simulations/comparison")
                        .with(SignedIn.as(Role.CONSULTANT, house))
                        .contentType("application/json")
                        .content("{\"simulation\":" + bound("As it is", "21") + """
                                ,"trials":[{"title":"Drier","changes":[
                                    {"input":"relativeHumidityFraction","value":0.3}]}]}"""))
                .andExpect(status().isAccepted()));

        JsonNode drier = ended(jobs.at("/items/1"));
        JsonNode asItIs = ended(jobs.at("/items/0"));

        assertThat(drier.at("/answer/inputs/relativeHumidityFraction").asDouble())
                .isEqualTo(0.3);
        assertThat(asItIs.at("/answer/inputs/relativeHumidityFraction").asDouble())
                .isEqualTo(0.4);
        String comparison = drier.at("/simulation/comparison").asString();
        ask(bound("Another", "21"));
        JsonNode side = json(look("?limit=1&comparison=" + comparison));
        JsonNode rest = json(look("?limit=1&comparison=" + comparison + "&cursor="
                + side.get("next").asString()));
        assertThat(List.of(
                        side.at("/items/0/title").asString(),
                        rest.at("/items/0/title").asString()))
                .containsExactlyInAnyOrder("As it is", "Drier");
        assertThat(rest.path("next").isNull() || rest.path("next").isMissingNode())
                .isTrue();
    }

    @Test
    void what_cannot_be_run_is_refused_before_it_is_asked_for() throws Exception {
        ask(bound("Hot", "2100"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("outside-limits"))
                .andExpect(jsonPath("$.errors[0].field").value("dryBulbC"));
        ask("{\"title\":\"At once\",\"calculation\":\"particle-balance\",\"bindings\":[]}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("no-long-run"));
        ask(bound("Nowhere", "21").replace("0.4", "0.4}, {\"input\":\"dryBulbC\",\"path\":\"house.nothing\""))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("unknown-path"));
        ask("{\"title\":\"No such wall\",\"calculation\":\"assembly-resistance\",\"assembly\":\"none\"}")
                .andExpect(status().isNotFound());
        assertThat(json(look("")).get("items").size()).isZero();
        assertThat(json(http.perform(get("/api/v1/houses/" + house + "/jobs").with(SignedIn.as(Role.DESIGNER))))
                        .get("items")
                        .size())
                .isZero();
    }

    private static String inputs(double dryBulbC) {
        return "{\"dryBulbC\":" + dryBulbC
                + ",\"pressurePa\":101325,\"relativeHumidityFraction\":0.4,\"belowFreezing\":\"OVER_ICE\"}";
    }

    /** Room air of this temperature, or that of the design day where none is given. */
    private static String bound(String title, String dryBulbC) {
        String dryBulb = dryBulbC == null
                ? "{\"input\":\"dryBulbC\",\"path\":\"house.designOutdoorC\"}"
                : "{\"input\":\"dryBulbC\",\"value\":" + dryBulbC + "}";
        return "{\"title\":\"" + title + "\",\"calculation\":\"moist-air-state\",\"bindings\":[" + dryBulb + """
                ,{"input":"pressurePa","value":101325},{"input":"belowFreezing","value":"OVER_ICE"},
                {"input":"relativeHumidityFraction","value":0.4}]}""";
    }

    private ResultActions ask(String body) throws Exception {
        return http.perform(post("/api/v1/houses/" + house + "/simulations")
                .with(SignedIn.as(Role.DESIGNER))
                .contentType("application/json")
                .content(body));
    }

    private ResultActions look(String rest) throws Exception {
        return http.perform(get(URI.create("/api/v1/houses/" + house + "/simulations" + rest))
                .with(SignedIn.as(Role.OWNER, house)));
    }

    private JsonNode ended(JsonNode job) throws Exception {
        String id = job.get("id").asString();
        await().atMost(Duration.ofSeconds(30))
                .until(() -> List.of("DONE", "FAILED", "CANCELLED")
                        .contains(json(look("/" + id)).at("/simulation/state").asString()));
        return json(http.perform(
                get("/api/v1/houses/" + house + "/simulations/" + id).with(SignedIn.as(Role.DESIGNER))));
    }

    private static JsonNode json(ResultActions answer) throws Exception {
        return JsonMapper.shared()
                .readTree(answer.andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8));
    }
}
