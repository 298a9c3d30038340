package oakum.portal.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;

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
