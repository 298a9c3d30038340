package oakum.portal.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

@PortalTest
class IdempotencyTest {
    private final String key = UUID.randomUUID().toString();

    @Autowired
    MockMvc http;

    @Autowired
    BodiesForTests operations;

    @Autowired
    JdbcClient jdbc;

    @Test
    void the_same_request_sent_again_gets_the_same_answer_and_does_nothing() throws Exception {
        MockHttpServletResponse first = make("a", key, Role.DESIGNER);
        int made = operations.made.get();
        MockHttpServletResponse second = make("a", key, Role.DESIGNER);
        assertThat(first.getStatus()).isEqualTo(201);
        assertThat(second.getStatus()).isEqualTo(201);
        assertThat(second.getContentAsString()).isEqualTo(first.getContentAsString());
        assertThat(second.getContentType()).isEqualTo(first.getContentType());
        assertThat(first.getHeader(Idempotency.REPLAYED)).isNull();
        assertThat(second.getHeader(Idempotency.REPLAYED)).isEqualTo("true");
        assertThat(operations.made).hasValue(made);
    }

    @Test
    void another_request_with_the_same_key_is_refused() throws Exception {
        make("a", key, Role.DESIGNER);
        int made = operations.made.get();
        MockHttpServletResponse other = make("b", key, Role.DESIGNER);
        assertThat(other.getStatus()).isEqualTo(422);
        assertThat(other.getContentAsString()).contains("idempotency-key-reused");
        assertThat(operations.made).hasValue(made);
    }

    @Test
    void a_key_is_one_persons_own() throws Exception {
        String first = make("a", key, Role.DESIGNER).getContentAsString();
        assertThat(make("a", key, Role.OFFICE_MANAGER).getContentAsString()).isNotEqualTo(first);
    }

    @Test
    void a_refused_request_leaves_its_key_free() throws Exception {
        assertThat(make("refused", key, Role.DESIGNER).getStatus()).isEqualTo(409);
        assertThat(make("a", key, Role.DESIGNER).getStatus()).isEqualTo(201);
    }

    @Test
    void while_the_first_request_runs_the_second_is_told_so() throws Exception {
        CountDownLatch hold = new CountDownLatch(1);
        operations.hold = hold;
        try {
            CompletableFuture<MockHttpServletResponse> first = CompletableFuture.supplyAsync(() -> {
                try {
                    return make("slow", key, Role.DESIGNER);
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                }
            });
            while (jdbc.sql("select count(*) from http.kept_answer where idempotency_key = ?")
                            .params(key)
                            .query(Integer.class)
                            .single()
                    == 0) {
                Thread.sleep(20);
            }
            MockHttpServletResponse second = make("slow", key, Role.DESIGNER);
            assertThat(second.getStatus()).isEqualTo(409);
            assertThat(second.getContentAsString()).contains("idempotency-key-in-use");
            assertThat(second.getHeader("Retry-After")).isEqualTo("1");
            hold.countDown();
            assertThat(first.get().getStatus()).isEqualTo(201);
            assertThat(make("slow", key, Role.DESIGNER).getContentAsString())
                    .isEqualTo(first.get().getContentAsString());
        } finally {
            operations.hold = null;
            hold.countDown();
        }
    }

    @Test
    void a_claim_that_a_killed_portal_left_is_free_after_two_minutes_where_nothing_was_done() throws Exception {
        make("a", key, Role.DESIGNER);
        left("asked_at - interval '119 seconds'", false);
        assertThat(make("a", key, Role.DESIGNER).getContentAsString()).contains("idempotency-key-in-use");
        left("asked_at - interval '121 seconds'", false);
        MockHttpServletResponse again = make("a", key, Role.DESIGNER);
        assertThat(again.getStatus()).isEqualTo(201);
        assertThat(again.getHeader(Idempotency.REPLAYED)).isNull();
    }

    @Test
    void a_claim_under_which_something_was_done_is_never_free_again() throws Exception {
        make("a", key, Role.DESIGNER);
        int made = operations.made.get();
        left("asked_at - interval '1 hour'", true);
        assertThat(make("a", key, Role.DESIGNER).getContentAsString()).contains("was done");
        assertThat(operations.made).hasValue(made);
    }

    @Test
    void an_act_is_bound_to_its_key_in_one_transaction() throws Exception {
        assertThat(make("audited", key, Role.PRINCIPAL).getStatus()).isEqualTo(201);
        assertThat(jdbc.sql("select acted_at is not null from http.kept_answer where idempotency_key = ?")
                        .params(key)
                        .query(Boolean.class)
                        .single())
                .isTrue();
    }

    @Test
    void a_request_that_lost_its_key_to_a_later_one_does_nothing() throws Exception {
        assertThat(make("lost", key, Role.PRINCIPAL).getContentAsString()).contains("given to a later one");
        assertThat(jdbc.sql("select count(*) from people.audit_line where sentence = ?")
                        .params("lost " + key)
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    /** As a kill leaves it: no answer. */
    private void left(String askedAt, boolean acted) {
        jdbc.sql("update http.kept_answer set status = null, headers = null, body = null, acted_at = "
                        + (acted ? "asked_at" : "null") + ", asked_at = " + askedAt + " where idempotency_key = ?")
                .params(key)
                .update();
    }

    @Test
    void a_key_that_is_none_is_refused() throws Exception {
        assertThat(make("a", "two words", Role.DESIGNER).getContentAsString()).contains("idempotency-key-malformed");
        assertThat(make("a", "x".repeat(201), Role.DESIGNER).getStatus()).isEqualTo(400);
    }

    private MockHttpServletResponse make(String name, String idempotencyKey, Role role) throws Exception {
        return http.perform(post("/api/v1/for-tests/makings")
                        .with(SignedIn.as(role))
                        .header(Idempotency.KEY, idempotencyKey)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"name\": \"" + name + "\"}"))
                .andReturn()
                .getResponse();
    }
}
