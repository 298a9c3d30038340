package oakum.portal.people;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import oakum.portal.PortalTest;
import oakum.portal.ShiftableClock;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What a token or a share lets somebody see, and that it ends when it is taken back. */
@PortalTest
class TokensAndSharesTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    Accounts accounts;

    @Autowired
    Audit audit;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ShiftableClock clock;

    private String mine;
    private String others;

    @BeforeEach
    void twoHouses() {
        mine = HouseFixtures.house(houses);
        others = HouseFixtures.house(houses);
    }

    @Test
    void a_consultants_token_sees_its_house_and_nothing_else_until_it_is_revoked() throws Exception {
        JsonNode made = made(token("[\"" + mine + "\"]", "[\"VIEW_HOUSE\", \"COMMENT\"]", 30), mine);
        String secret = made.get("secret").asString();
        String id = made.get("token").get("id").asString();
        assertThat(secret).startsWith("oak_").hasSizeGreaterThan(40);

        assertThat(json(bearer(get("/api/v1/me"), secret)).get("token").asBoolean())
                .isTrue();
        assertThat(bearer(get("/api/v1/houses/" + mine + "/shares"), secret).getStatus())
                .isEqualTo(200);
        assertThat(bearer(get("/api/v1/houses/" + others + "/shares"), secret).getStatus())
                .isEqualTo(404);
        assertThat(json(bearer(get("/api/v1/houses"), secret))
                        .get("items")
                        .valueStream()
                        .map(h -> h.get("id").asString()))
                .containsExactly(mine);
        // a machine makes no further tokens
        assertThat(bearer(token("[]", "[\"VIEW_HOUSE\"]", 30), secret).getStatus())
                .isEqualTo(403);
        // the secret is kept nowhere, and its last use is known
        JsonNode listed = json(as(get("/api/v1/tokens"), mine))
                .valueStream()
                .filter(t -> t.get("id").asString().equals(id))
                .findFirst()
                .orElseThrow();
        assertThat(listed.toString()).doesNotContain(secret);
        assertThat(listed.get("lastUsedAt").isNull()).isFalse();

        assertThat(as(delete("/api/v1/tokens/" + id), mine).getStatus()).isEqualTo(204);
        MockHttpServletResponse after = bearer(get("/api/v1/me"), secret);
        assertThat(after.getStatus()).isEqualTo(401);
        assertThat(after.getContentAsString()).contains("token-refused");
    }

    @Test
    void a_token_ends_on_its_day() throws Exception {
        String secret =
                made(token("[]", "[\"VIEW_HOUSE\"]", 1), mine).get("secret").asString();
        assertThat(bearer(get("/api/v1/me"), secret).getStatus()).isEqualTo(200);
        clock.shiftTo(clock.instant().plus(Duration.ofDays(1)).plusSeconds(1));
        try {
            assertThat(bearer(get("/api/v1/me"), secret).getStatus()).isEqualTo(401);
        } finally {
            clock.unshift();
        }
    }

    @Test
    void a_token_never_may_more_than_its_person_nor_more_than_it_says() throws Exception {
        assertThat(as(token("[\"" + mine + "\"]", "[\"EDIT_RECORD\"]", 30), mine)
                        .getStatus())
                .isEqualTo(403);
        assertThat(as(token("[\"" + others + "\"]", "[\"VIEW_HOUSE\"]", 30), mine)
                        .getStatus())
                .isEqualTo(404);
        assertThat(as(token("[]", "[]", 30), mine).getStatus()).isEqualTo(422);
        assertThat(as(token("[]", "[\"VIEW_HOUSE\"]", 0), mine).getStatus()).isEqualTo(422);
        assertThat(as(token("[]", "[\"VIEW_HOUSE\"]", 367), mine).getStatus()).isEqualTo(422);

        String principals = json(http.perform(
                                token("[]", "[\"VIEW_HOUSE\"]", 30).with(SignedIn.as(Role.PRINCIPAL)))
                        .andReturn()
                        .getResponse())
                .get("secret")
                .asString();
        assertThat(bearer(get("/api/v1/houses/" + mine + "/shares"), principals).getStatus())
                .isEqualTo(200);
        assertThat(bearer(get("/api/v1/people"), principals).getStatus()).isEqualTo(403);
    }

    @Test
    void a_share_opens_a_house_and_taking_it_back_closes_it_at_the_next_request() throws Exception {
        String account = "share-" + mine.toLowerCase(Locale.ROOT);
        var person = accounts.createIfAbsent(account, "consultant", "a long password", Role.CONSULTANT, null);
        String path = "/api/v1/houses/" + mine + "/shares";
        assertThat(sees(person, mine)).isFalse();

        String body = "{\"account\": \"" + account + "\", \"role\": \"CONSULTANT\"}";
        assertThat(principal(post(path).contentType(MediaType.APPLICATION_JSON).content(body))
                        .getStatus())
                .isEqualTo(201);
        assertThat(sees(person, mine)).isTrue();
        assertThat(sees(person, others)).isFalse();
        assertThat(principal(get(path)).getContentAsString(UTF_8)).contains(account);

        assertThat(principal(delete(path + "/" + person)).getStatus()).isEqualTo(204);
        assertThat(sees(person, mine)).isFalse();
        assertThat(principal(delete(path + "/" + person)).getStatus()).isEqualTo(404);
        assertThat(principal(post("/api/v1/houses/NO-SUCH/shares")
                                .contentType(MediaType.APPLICATION_JSON)
                                .content(body))
                        .getStatus())
                .isEqualTo(404);
        assertThat(principal(get("/api/v1/audit").param("house", mine)).getContentAsString(UTF_8))
                .contains("house-shared", "share-withdrawn");
    }

    @Test
    void a_share_with_an_end_opens_the_house_until_that_day_is_over() throws Exception {
        String account = "ends-" + mine.toLowerCase(Locale.ROOT);
        var person = accounts.createIfAbsent(account, "consultant", "a long password", Role.CONSULTANT, null);
        String path = "/api/v1/houses/" + mine + "/shares";
        String body = "{\"account\": \"" + account + "\", \"role\": \"CONSULTANT\", \"endsOn\": \"%s\"}";
        LocalDate today =
                LocalDate.parse(json(as(get("/api/v1/me"), mine)).get("today").asString());
        assertThat(share(path, body.formatted(today.minusDays(1))).getContentAsString(UTF_8))
                .contains("day-past");
        assertThat(share(path, body.formatted(today.plusDays(9))).getStatus()).isEqualTo(201);
        assertThat(sees(person, mine)).isTrue();
        // another end replaces the first one
        assertThat(share(path, body.formatted(today)).getStatus()).isEqualTo(201);
        assertThat(sees(person, mine)).isTrue();
        assertThat(json(principal(get(path)))
                        .valueStream()
                        .filter(s -> s.get("account").asString().equals(account))
                        .map(s -> s.get("endsOn").asString()))
                .containsExactly(today.toString());
        jdbc.sql("update people.held_role set ends_on = ? where account_id = ?")
                .params(today.minusDays(1), person)
                .update();
        assertThat(sees(person, mine)).isFalse();
        assertThat(principal(get(path)).getContentAsString(UTF_8)).contains("\"ended\":true");
    }

    private MockHttpServletResponse share(String path, String body) throws Exception {
        return principal(post(path).contentType(MediaType.APPLICATION_JSON).content(body));
    }

    @Test
    void the_feed_gives_each_change_of_a_shared_house_exactly_once_even_when_acts_overlap() throws Exception {
        String start = json(as(get("/api/v1/changes"), mine)).get("next").asString();
        act(others, "elsewhere");
        // an act begins first and is committed last
        transaction.executeWithoutResult(open -> {
            recordAsPortal(mine, "slow");
            // on another thread: what runs here would see its own act before it is committed
            List<String> between = CompletableFuture.supplyAsync(() -> {
                        act(mine, "quick");
                        return sentences(since(start));
                    })
                    .join();
            assertThat(between).containsExactly("quick");
        });
        JsonNode first = since(start);
        assertThat(sentences(first)).containsExactly("quick", "slow");
        String next = first.get("next").asString();
        assertThat(sentences(since(next))).isEmpty();
        act(mine, "later");
        JsonNode last = since(next);
        assertThat(sentences(last)).containsExactly("later");
        assertThat(last.get("items").get(0).get("resource").asString()).isEqualTo("/api/v1/houses/" + mine);
        assertThat(as(get("/api/v1/changes").param("since", "!!"), mine).getStatus())
                .isEqualTo(400);
    }

    @Test
    void the_trail_cannot_be_changed_even_in_the_database() {
        act(mine, "kept");
        assertThatThrownBy(() -> jdbc.sql("update people.audit_line set sentence = 'other'")
                        .update())
                .hasMessageContaining("only ever added to");
        assertThatThrownBy(() -> jdbc.sql("delete from people.audit_line").update())
                .hasMessageContaining("only ever added to");
    }

    @Test
    void guessing_is_slowed_down_for_the_guesser_and_for_nobody_else() throws Exception {
        accounts.createIfAbsent("guessed", "designer", "a long password", Role.DESIGNER, null);
        for (int i = 0; i < SignInLimits.FAILURES_PER_ACCOUNT; i++) {
            assertThat(signIn("guessed", "wrong password", "192.0.2.1").getStatus())
                    .isEqualTo(401);
        }
        MockHttpServletResponse refused = signIn("guessed", "a long password", "192.0.2.1");
        assertThat(refused.getStatus()).isEqualTo(429);
        assertThat(Integer.parseInt(refused.getHeader("Retry-After"))).isBetween(1, 61);
        assertThat(signIn("guessed", "a long password", "192.0.2.2").getStatus())
                .isEqualTo(200);
        for (int i = 0; i < SignInLimits.FAILURES_PER_ADDRESS; i++) {
            assertThat(bearerFrom("192.0.2.3").getStatus()).isEqualTo(401);
        }
        assertThat(bearerFrom("192.0.2.3").getStatus()).isEqualTo(429);
    }

    private MockHttpServletResponse bearerFrom(String address) throws Exception {
        return http.perform(get("/api/v1/me")
                        .header("Authorization", "Bearer oak_guess")
                        .with(request -> {
                            request.setRemoteAddr(address);
                            return request;
                        }))
                .andReturn()
                .getResponse();
    }

    private MockHttpServletResponse signIn(String account, String password, String address) throws Exception {
        return http.perform(post("/api/v1/session")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"account\": \"" + account + "\", \"password\": \"" + password + "\"}")
                        .with(request -> {
                            request.setRemoteAddr(address);
                            return request;
                        }))
                .andReturn()
                .getResponse();
    }

    private void act(String house, String sentence) {
        transaction.executeWithoutResult(open -> recordAsPortal(house, sentence));
    }

    private void recordAsPortal(String house, String sentence) {
        AsPortal.run(() -> audit.record("tried", house, sentence));
    }

    private JsonNode since(String cursor) {
        try {
            return json(as(get("/api/v1/changes").param("since", cursor), mine));
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** The sentences of this test; opening the house made lines of its own. */
    private static List<String> sentences(JsonNode changes) {
        List<String> found = new ArrayList<>();
        changes.get("items").forEach(line -> {
            if (line.get("act").asString().equals("tried")) {
                found.add(line.get("sentence").asString());
            }
        });
        return found;
    }

    private boolean sees(UUID person, String house) throws Exception {
        return http.perform(get("/api/v1/houses/" + house + "/shares")
                                .with(authentication(SignInForTests.authentication(person))))
                        .andReturn()
                        .getResponse()
                        .getStatus()
                == 200;
    }

    private static MockHttpServletRequestBuilder token(String houses, String permissions, int days) {
        return post("/api/v1/tokens")
                .contentType(MediaType.APPLICATION_JSON)
                .content("{\"label\": \"for a test\", \"houses\": " + houses + ", \"permissions\": " + permissions
                        + ", \"days\": " + days + "}");
    }

    private JsonNode made(MockHttpServletRequestBuilder request, String house) throws Exception {
        MockHttpServletResponse answer = as(request, house);
        assertThat(answer.getStatus()).as(answer.getContentAsString(UTF_8)).isEqualTo(201);
        return json(answer);
    }

    private MockHttpServletResponse as(MockHttpServletRequestBuilder request, String house) throws Exception {
        return http.perform(request.with(SignedIn.as(Role.CONSULTANT, house)))
                .andReturn()
                .getResponse();
    }

    private MockHttpServletResponse principal(MockHttpServletRequestBuilder request) throws Exception {
        return http.perform(request.with(SignedIn.as(Role.PRINCIPAL)))
                .andReturn()
                .getResponse();
    }

    private MockHttpServletResponse bearer(MockHttpServletRequestBuilder request, String secret) throws Exception {
        return http.perform(request.header("Authorization", "Bearer " + secret))
                .andReturn()
                .getResponse();
    }

    private static JsonNode json(MockHttpServletResponse answer) throws Exception {
        return JSON.readTree(answer.getContentAsString(UTF_8));
    }
}
