package oakum.portal.reading;

import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Makes the monthly partitions of the readings as they are needed. Each is made on its own and attached, in a short
 * transaction of its own: attaching disturbs neither those who read nor those who write, which creating it in place
 * would.
 */
@Component
class Partitions {
    private final JdbcClient jdbc;
    private final TransactionTemplate alone;

    Partitions(JdbcClient jdbc, PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.alone = new TransactionTemplate(transactions);
        alone.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    void ensure(List<YearMonth> months) {
        for (YearMonth month : months) {
            if (!exists(month)) {
                alone.executeWithoutResult(status -> make(month));
            }
        }
    }

    private void make(YearMonth month) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended('reading.partitions', 0))")
                .query()
                .singleRow();
        if (exists(month)) {
            return;
        }
        // the name and the bounds are made of a year and a month only
        jdbc.sql("create table " + name(month) + " (like reading.reading including all)")
                .update();
        jdbc.sql("alter table reading.reading attach partition " + name(month) + " for values from ('" + start(month)
                        + "') to ('" + start(month.plusMonths(1)) + "')")
                .update();
    }

    private boolean exists(YearMonth month) {
        return jdbc.sql("select to_regclass(?) is not null")
                .param(name(month))
                .query(Boolean.class)
                .single();
    }

    private static String name(YearMonth month) {
        return String.format(Locale.ROOT, "reading.reading_%04d_%02d", month.getYear(), month.getMonthValue());
    }

    private static String start(YearMonth month) {
        return month.atDay(1).atStartOfDay().atOffset(ZoneOffset.UTC).toString();
    }
}
