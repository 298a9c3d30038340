package oakum.portal.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.springframework.web.servlet.HandlerMapping;

/** The outermost filter: what fails before or beside a controller (a session that cannot be read) is a problem, too. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class FilterProblems extends OncePerRequestFilter {
    private static final Logger LOG = LoggerFactory.getLogger(FilterProblems.class);

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
            if (response.isCommitted()) {
                throw e;
            }
            Exception cause = e instanceof ServletException && e.getCause() instanceof Exception inner ? inner : e;
            boolean database = cause instanceof DataAccessException || cause instanceof TransactionException;
            if (database && request.getAttribute(HandlerMapping.BEST_MATCHING_HANDLER_ATTRIBUTE) != null) {
                // the controller may have done its act, and only the session could not be kept
                LOG.error("the database is away after the act", e);
                cause = ProblemAdvice.brokenOff();
            }
            // what was begun of another answer, its status included, goes
            response.reset();
            if (resolver.resolveException(request, response, null, cause) == null) {
                throw e;
            }
        }
    }
}
