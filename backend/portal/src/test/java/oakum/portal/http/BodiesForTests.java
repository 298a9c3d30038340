package oakum.portal.http;

import io.swagger.v3.oas.annotations.Hidden;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import oakum.portal.people.Audit;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Operations that exist only in tests: each takes or throws what any controller may. */
@Hidden
@RestController
@RequestMapping("/api/v1/for-tests")
class BodiesForTests {
    final AtomicInteger made = new AtomicInteger();
    volatile @Nullable CountDownLatch hold;

    private final JdbcClient jdbc;

    private final Audit audit;
    private final TransactionTemplate transaction;
    private final TransactionTemplate elsewhere;

    BodiesForTests(JdbcClient jdbc, Audit audit, PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.audit = audit;
        this.transaction = new TransactionTemplate(transactions);
        this.elsewhere = new TransactionTemplate(transactions);
        elsewhere.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    private static ServletRequestAttributes request() {
        return (ServletRequestAttributes) RequestContextHolder.currentRequestAttributes();
    }

    private static Object claim() {
        return Objects.requireNonNull(request().getAttribute(IdempotentAct.CLAIM, RequestAttributes.SCOPE_REQUEST));
    }

    private static String key() {
        return request().getRequest().getHeader(Idempotency.KEY);
    }

    enum Kind {
        FAN,
        DOOR
    }

    record Row(String id, double flowM3PerS) {}

    record Body(
            String label,
            double flowM3PerS,
            int count,
            boolean continuous,
            Kind kind,
            LocalDate on,
            List<Row> rows,
            @Nullable Double heightM,
            @Nullable UUID personId) {}

    @PostMapping("/bodies")
    Body body(@RequestBody Body body) {
        return body;
    }

    record Made(int number) {}

    record Making(String name) {}

    @PostMapping("/makings")
    @ResponseStatus(HttpStatus.CREATED)
    Made make(@RequestBody Making making) throws InterruptedException {
        CountDownLatch latch = hold;
        if (latch != null) {
            latch.await(20, TimeUnit.SECONDS);
        }
        if (making.name().equals("refused")) {
            throw Problem.conflict("refused-for-test", "Refused.");
        }
        if (making.name().equals("audited") || making.name().equals("lost")) {
            transaction.executeWithoutResult(status -> {
                if (making.name().equals("lost")) {
                    elsewhere.executeWithoutResult(
                            other -> jdbc.sql("update http.kept_answer set claim = gen_random_uuid() where claim = ?")
                                    .params(claim())
                                    .update());
                }
                audit.record("made-for-test", null, making.name() + " " + key());
            });
        }
        return new Made(made.incrementAndGet());
    }

    @GetMapping("/failures")
    void fail(@RequestParam String kind, @RequestParam(defaultValue = "1") int number) {
        switch (kind) {
            case "refused" ->
                throw new Refused(
                        new Violation("rows[0].flowM3PerS", "3", 0.0, 2.0, "m3/s", "a standard", "Too much."));
            case "locking" -> throw new OptimisticLockingFailureException("row was updated");
            case "away" -> throw new DataAccessResourceFailureException("connection refused");
            case "unique" -> {
                jdbc.sql("insert into people.account (id, account, display_name, created_at)"
                                + " values (gen_random_uuid(), 'portal', 'twice', now())")
                        .update();
            }
            case "reference" -> {
                jdbc.sql("insert into people.held_role (account_id, role) values (gen_random_uuid(), 'DESIGNER')")
                        .update();
            }
            case "check" -> {
                jdbc.sql("insert into people.account (id, account, display_name, created_at)"
                                + " values (gen_random_uuid(), 'UPPER', 'x', now())")
                        .update();
            }
            case "statement" -> {
                jdbc.sql("select secret_column from people.no_such_table").update();
            }
            default -> throw new IllegalStateException("secret detail " + number);
        }
    }
}
