package oakum.portal.http;

import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * Binds an act to the Idempotency-Key of its request, in the act's own transaction: both are there or neither. So a key
 * whose answer was never kept can be freed where nothing was done, and never where something was.
 */
@Component
public class IdempotentAct {
    static final String CLAIM = IdempotentAct.class.getName();

    private final JdbcClient jdbc;
    private final Clock clock;

    IdempotentAct(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * Says that this transaction acts for the request that is being answered; without a key there is nothing to say.
     *
     * @throws Problem 409 {@code idempotency-key-in-use} where the request took so long that its key was given to another
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void done() {
        RequestAttributes request = RequestContextHolder.getRequestAttributes();
        if (request == null || !(request.getAttribute(CLAIM, RequestAttributes.SCOPE_REQUEST) instanceof UUID claim)) {
            return;
        }
        int still = jdbc.sql("update http.kept_answer set acted_at = ? where claim = ?")
                .params(java.sql.Timestamp.from(clock.instant()), claim)
                .update();
        if (still == 0) {
            throw Problem.conflict(
                    "idempotency-key-in-use",
                    "Not done: this request took so long that its Idempotency-Key was given to a later one.");
        }
    }
}
