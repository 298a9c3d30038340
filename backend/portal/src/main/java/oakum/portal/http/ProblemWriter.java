package oakum.portal.http;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes a problem where no controller answers: in filters and at sign-in. */
@Component
public class ProblemWriter {
    private final JsonMapper json;

    ProblemWriter(JsonMapper json) {
        this.json = json;
    }

    /** Answers the request with a problem, as RFC 9457 has it. */
    public void write(HttpServletResponse response, Problem problem) throws IOException {
        problem.headers().forEach(response::setHeader);
        response.setStatus(problem.status().value());
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.getOutputStream().write(json.writeValueAsBytes(members(problem)));
    }

    static Map<String, Object> members(Problem problem) {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("type", "about:blank");
        members.put("title", title(problem.status()));
        members.put("status", problem.status().value());
        members.put("detail", problem.detail());
        members.put("code", problem.code());
        members.putAll(problem.properties());
        return members;
    }

    static String title(HttpStatus status) {
        return status.getReasonPhrase();
    }
}
