package oakum.portal.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** The outermost filter: what fails before or beside a controller (a session that cannot be read) is a problem, too. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class FilterProblems extends OncePerRequestFilter {
    private final HandlerExceptionResolver resolver;

    FilterProblems(@Qualifier("handlerExceptionResolver") HandlerExceptionResolver resolver) {
        this.resolver = resolver;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            chain.doFilter(request, response);
        } catch (RuntimeException | ServletException | IOException e) {
            Exception cause = e instanceof ServletException && e.getCause() instanceof Exception inner ? inner : e;
            if (response.isCommitted() || resolver.resolveException(request, response, null, cause) == null) {
                throw e;
            }
        }
    }
}
