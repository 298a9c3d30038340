package oakum.portal.people;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import oakum.portal.http.Problem;
import oakum.portal.http.ProblemWriter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.web.filter.OncePerRequestFilter;

/** Signs a machine in by its token, for this one request: no session, no cookie. */
class BearerFilter extends OncePerRequestFilter {
    private static final String SCHEME = "Bearer ";

    private final Tokens tokens;
    private final SignInLimits limits;
    private final ProblemWriter problems;

    BearerFilter(Tokens tokens, SignInLimits limits, ProblemWriter problems) {
        this.limits = limits;
        this.tokens = tokens;
        this.problems = problems;
    }

    static boolean carriesToken(HttpServletRequest request) {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        return header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!carriesToken(request)) {
            chain.doFilter(request, response);
            return;
        }
        String secret = request.getHeader(HttpHeaders.AUTHORIZATION)
                .substring(SCHEME.length())
                .strip();
        Optional<Person> person;
        try {
            limits.check(request.getRemoteAddr());
            person = tokens.person(secret);
        } catch (Problem tooMany) {
            problems.write(response, tooMany);
            return;
        }
        if (person.isEmpty()) {
            limits.failed(request.getRemoteAddr());
            problems.write(
                    response,
                    new Problem(
                                    HttpStatus.UNAUTHORIZED,
                                    "token-refused",
                                    "The token is unknown, expired or revoked; make a new one under tokens.")
                            .header(HttpHeaders.WWW_AUTHENTICATE, "Bearer error=\"invalid_token\""));
            return;
        }
        SecurityContextHolder.setContext(new SecurityContextImpl(
                UsernamePasswordAuthenticationToken.authenticated(person.get(), null, List.of())));
        chain.doFilter(request, response);
    }
}
