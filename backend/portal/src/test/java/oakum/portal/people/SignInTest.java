package oakum.portal.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.jayway.jsonpath.JsonPath;
import jakarta.servlet.http.Cookie;
import java.util.Objects;
import java.util.UUID;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.ResultActions;

@PortalTest
class SignInTest {
    @Autowired
    MockMvc http;

    @Autowired
    Accounts accounts;

    @BeforeEach
    void somebody() {
        accounts.createIfAbsent("sign-in-test", "designer", "a long password", Role.DESIGNER, null);
    }

    @Test
    void a_right_password_opens_a_session_that_lasts_until_sign_out() throws Exception {
        MvcResult signedIn = signIn("sign-in-test", "a long password");
        assertThat(signedIn.getResponse().getStatus()).isEqualTo(200);
        Cookie session = signedIn.getResponse().getCookie("OAKUM_SESSION");
        assertThat(session).isNotNull();
        assertThat(session.isHttpOnly()).isTrue();

        MvcResult me = http.perform(get("/api/v1/me").cookie(session))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.account").value("sign-in-test"))
                .andExpect(jsonPath("$.roles[0].role").value("DESIGNER"))
                .andExpect(jsonPath("$.token").value(false))
                .andReturn();
        Cookie csrf = me.getResponse().getCookie("XSRF-TOKEN");
        assertThat(csrf).isNotNull();

        // with the session alone, nothing is changed
        http.perform(put("/api/v1/me/units")
                        .cookie(session)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"units\": \"SI\"}"))
                .andExpect(status().isForbidden())
                .andExpect(jsonPath("$.code").value("csrf-token-missing"));
        http.perform(put("/api/v1/me/units")
                        .cookie(session, csrf)
                        .header("X-XSRF-TOKEN", csrf.getValue())
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"units\": \"SI\"}"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.units").value("SI"));

        http.perform(delete("/api/v1/session").cookie(session, csrf).header("X-XSRF-TOKEN", csrf.getValue()))
                .andExpect(status().isNoContent());
        http.perform(get("/api/v1/me").cookie(session)).andExpect(status().isUnauthorized());
    }

    @Test
    void a_wrong_password_and_an_unknown_account_get_the_same_refusal() throws Exception {
        MvcResult wrong = signIn("sign-in-test", "another password");
        MvcResult unknown = signIn("nobody-of-that-name", "another password");
        assertThat(wrong.getResponse().getStatus()).isEqualTo(401);
        assertThat(unknown.getResponse().getContentAsString())
                .isEqualTo(wrong.getResponse().getContentAsString())
                .contains("sign-in-refused");
    }

    @Test
    void a_changed_password_ends_every_other_session_and_needs_the_old_one() throws Exception {
        accounts.createIfAbsent("changes-password", "designer", "the first password", Role.DESIGNER, null);
        Cookie here = session("changes-password", "the first password");
        Cookie there = session("changes-password", "the first password");
        changePassword(here, "not the first one", "the second password")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("old-password-wrong"));
        changePassword(here, "the first password", "short")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.field").value("newPassword"));
        http.perform(get("/api/v1/me").cookie(there)).andExpect(status().isOk());
        changePassword(here, "the first password", "the second password").andExpect(status().isNoContent());
        http.perform(get("/api/v1/me").cookie(here)).andExpect(status().isOk());
        http.perform(get("/api/v1/me").cookie(there)).andExpect(status().isUnauthorized());
        assertThat(signIn("changes-password", "the first password")
                        .getResponse()
                        .getStatus())
                .isEqualTo(401);
        assertThat(signIn("changes-password", "the second password")
                        .getResponse()
                        .getStatus())
                .isEqualTo(200);
    }

    @Test
    void a_closed_account_neither_signs_in_nor_stays_signed_in_and_its_history_stays() throws Exception {
        UUID id = accounts.createIfAbsent("leaves-the-firm", "site lead", "a long password", Role.SITE_LEAD, null);
        Cookie session = session("leaves-the-firm", "a long password");
        String token = JsonPath.read(
                http.perform(
                                post("/api/v1/tokens")
                                        .with(SignedIn.as(Role.PRINCIPAL))
                                        .with(authentication(SignInForTests.authentication(id)))
                                        .contentType(MediaType.APPLICATION_JSON)
                                        .content(
                                                "{\"label\": \"x\", \"houses\": [], \"permissions\": [\"VIEW_HOUSE\"], \"days\": 3}"))
                        .andExpect(status().isCreated())
                        .andReturn()
                        .getResponse()
                        .getContentAsString(),
                "$.secret");
        closing(id, Role.DESIGNER).andExpect(status().isForbidden());
        closing(id, Role.PRINCIPAL)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.active").value(false));
        closing(id, Role.PRINCIPAL)
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("account-closed"));
        http.perform(get("/api/v1/me").cookie(session)).andExpect(status().isUnauthorized());
        http.perform(get("/api/v1/me").header("Authorization", "Bearer " + token))
                .andExpect(status().isUnauthorized())
                .andExpect(jsonPath("$.code").value("token-refused"));
        assertThat(signIn("leaves-the-firm", "a long password").getResponse().getStatus())
                .isEqualTo(401);
        http.perform(get("/api/v1/audit").with(SignedIn.as(Role.PRINCIPAL)))
                .andExpect(
                        jsonPath("$.items[?(@.account=='leaves-the-firm')].act").value("token-made"));
    }

    private ResultActions closing(UUID id, Role role) throws Exception {
        return http.perform(post("/api/v1/people/{id}/closing", id)
                .with(SignedIn.as(role))
                .contentType(MediaType.APPLICATION_JSON)
                .content("{\"reason\": \"left the firm\"}"));
    }

    private Cookie session(String account, String password) throws Exception {
        return Objects.requireNonNull(signIn(account, password).getResponse().getCookie("OAKUM_SESSION"));
    }

    private ResultActions changePassword(Cookie session, String old, String fresh) throws Exception {
        Cookie csrf = Objects.requireNonNull(http.perform(get("/api/v1/me").cookie(session))
                .andReturn()
                .getResponse()
                .getCookie("XSRF-TOKEN"));
        return http.perform(put("/api/v1/me/password")
                .cookie(session, csrf)
                .header("X-XSRF-TOKEN", csrf.getValue())
                .contentType(MediaType.APPLICATION_JSON)
                .content("{\"oldPassword\": \"" + old + "\", \"newPassword\": \"" + fresh + "\"}"));
    }

    @Test
    void without_signing_in_there_is_a_problem_and_not_a_page() throws Exception {
        http.perform(get("/api/v1/me"))
                .andExpect(status().isUnauthorized())
                .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.code").value("signed-out"))
                .andExpect(header().doesNotExist("WWW-Authenticate"));
    }

    @Test
    void a_test_can_be_anybody() throws Exception {
        http.perform(get("/api/v1/me").with(SignedIn.as(Role.OWNER, "H1", "H2")))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.roles.length()").value(2));
        http.perform(put("/api/v1/me/units")
                        .with(SignedIn.as(Role.SITE_LEAD))
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"units\": \"IP\"}"))
                .andExpect(status().isOk());
    }

    @Test
    void no_page_may_run_a_script_from_elsewhere_or_be_framed() throws Exception {
        http.perform(get("/api/v1/me").with(SignedIn.as(Role.DESIGNER)))
                .andExpect(header().string("Content-Security-Policy", Security.CONTENT_POLICY))
                .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                .andExpect(header().string("Referrer-Policy", "no-referrer"))
                .andExpect(header().string("X-Frame-Options", "DENY"));
    }

    private MvcResult signIn(String account, String password) throws Exception {
        return http.perform(post("/api/v1/session")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"account\": \"" + account + "\", \"password\": \"" + password + "\"}"))
                .andReturn();
    }
}
