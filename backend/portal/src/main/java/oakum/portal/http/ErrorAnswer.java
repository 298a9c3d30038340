package oakum.portal.http;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Answers where the server or the firewall of requests refused before any filter of ours could. */
@Hidden
@RestController
class ErrorAnswer implements ErrorController {
    private final ProblemWriter problems;

    ErrorAnswer(ProblemWriter problems) {
        this.problems = problems;
    }

    @RequestMapping("/error")
    void answer(HttpServletRequest request, HttpServletResponse response) throws IOException {
        Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        HttpStatus known = code instanceof Integer number ? HttpStatus.resolve(number) : HttpStatus.NOT_FOUND;
        HttpStatus status = known == null ? HttpStatus.INTERNAL_SERVER_ERROR : known;
        problems.write(
                response,
                status.is4xxClientError()
                        ? new Problem(
                                status,
                                status == HttpStatus.NOT_FOUND ? "not-found" : "request-refused",
                                "The request cannot be taken as it is: " + ProblemWriter.title(status) + ".")
                        : new Problem(status, "unexpected", "Something went wrong in the portal; look in its log."));
    }
}
