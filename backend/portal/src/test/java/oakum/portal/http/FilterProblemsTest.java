package oakum.portal.http;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.FilterChain;
import java.nio.charset.StandardCharsets;
import java.sql.SQLTransientConnectionException;
import oakum.portal.PortalTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.CannotGetJdbcConnectionException;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.web.servlet.HandlerMapping;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The database goes away between the controller's answer and the keeping of the session. */
@PortalTest
class FilterProblemsTest {
    @Autowired
    FilterProblems filter;

    @Test
    void before_a_controller_was_reached_nothing_was_saved() throws Exception {
        JsonNode problem = problem((request, response) -> {
            throw away();
        });
        assertThat(problem.get("code").asString()).isEqualTo("database-away");
        assertThat(problem.get("detail").asString()).contains("Nothing was saved");
    }

    @Test
    void after_a_controller_answered_it_is_not_certain() throws Exception {
        JsonNode problem = problem((request, response) -> {
            request.setAttribute(HandlerMapping.BEST_MATCHING_HANDLER_ATTRIBUTE, this);
            response.getOutputStream().write("{\"id\":\"H1\"}".getBytes(StandardCharsets.UTF_8));
            throw away();
        });
        assertThat(problem.get("code").asString()).isEqualTo("database-away");
        assertThat(problem.get("detail").asString()).contains("not certain");
    }

    @Test
    void a_refusal_that_was_begun_and_not_sent_is_answered_once_with_its_own_status() throws Exception {
        JsonNode problem = problem((request, response) -> {
            request.setAttribute(HandlerMapping.BEST_MATCHING_HANDLER_ATTRIBUTE, this);
            ((MockHttpServletResponse) response).setStatus(500);
            response.getOutputStream().write("{\"code\":".getBytes(StandardCharsets.UTF_8));
            throw Problem.conflict("house-exists", "There is one already.");
        });
        assertThat(problem.get("code").asString()).isEqualTo("house-exists");
    }

    private JsonNode problem(FilterChain chain) throws Exception {
        MockHttpServletResponse response = new MockHttpServletResponse();
        filter.doFilter(new MockHttpServletRequest("POST", "/api/v1/houses"), response, chain);
        JsonNode problem = JsonMapper.shared().readTree(response.getContentAsString());
        assertThat(response.getStatus()).isEqualTo(problem.get("status").asInt());
        return problem;
    }

    private static CannotGetJdbcConnectionException away() {
        return new CannotGetJdbcConnectionException("away", new SQLTransientConnectionException("timed out"));
    }
}
