package oakum.portal.http;

import java.util.Map;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** Turns everything that goes wrong behind a controller into problem JSON with a stable code. */
@RestControllerAdvice
class ProblemAdvice extends ResponseEntityExceptionHandler {
    @ExceptionHandler
    ResponseEntity<Map<String, Object>> problem(Problem problem) {
        HttpHeaders headers = new HttpHeaders();
        problem.headers().forEach(headers::set);
        return ResponseEntity.status(problem.status())
                .headers(headers)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(ProblemWriter.members(problem));
    }
}
