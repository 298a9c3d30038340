package oakum.portal.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import oakum.portal.ShiftableClock;
import oakum.portal.people.Accounts;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Loads the invented firm into an empty database, each event on its day and by the person who did it, and lets the clock
 * run from Thursday 14 May 2026. The history is one transaction: half a demo is never left.
 */
@Component
@ConditionalOnProperty("oakum.demo")
class DemoFirm implements ApplicationRunner {
    static final LocalDate TODAY = LocalDate.of(2026, 5, 14);
    static final ZoneId OFFICE = ZoneId.of("America/Chicago");
    static final String PASSWORD = "demo-house";

    private static final Logger LOG = LoggerFactory.getLogger(DemoFirm.class);

    private final ShiftableClock clock;
    private final JdbcClient database;
    private final TransactionTemplate transaction;
    private final Accounts accounts;
    private final List<DemoChapter> chapters;
    private final DemoReadings readings;
    private final Optional<WebServerApplicationContext> server;

    DemoFirm(
            ShiftableClock clock,
            JdbcClient database,
            TransactionTemplate transaction,
            Accounts accounts,
            List<DemoChapter> chapters,
            DemoReadings readings,
            Optional<WebServerApplicationContext> server) {
        this.clock = clock;
        this.database = database;
        this.transaction = transaction;
        this.accounts = accounts;
        this.chapters = chapters;
        this.readings = readings;
        this.server = server;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        Instant start = at(TODAY, 9, 20);
        Instant loaded = database.sql("select at from demo.loaded")
                .query(OffsetDateTime.class)
                .optional()
                .map(OffsetDateTime::toInstant)
                .orElse(null);
        Telling telling = new Telling();
        if (loaded == null) {
            Instant machine = clock.instant();
            try {
                transaction.executeWithoutResult(status -> load(machine, telling));
            } finally {
                clock.unshift();
            }
            clock.shiftTo(start);
        } else {
            clock.shiftTo(start.plus(Duration.between(loaded, clock.instant())));
        }
        loadReadings(start);
        LOG.info(greeting());
    }

    private void load(Instant machine, Telling telling) {
        database.sql("insert into demo.loaded (at) values (?)")
                .param(machine.atOffset(ZoneOffset.UTC))
                .update();
        AsPortal.run(() -> {
            person("principal", "principal", Role.PRINCIPAL, null);
            person("designer", "designer", Role.DESIGNER, null);
            person("site", "site lead", Role.SITE_LEAD, null);
            person("office", "office manager", Role.OFFICE_MANAGER, null);
        });
        chapters.forEach(chapter -> chapter.tell(telling));
    }

    /** After the history, because a file of readings is a transaction of its own; cut off, it is simply sent again. */
    private void loadReadings(Instant until) {
        boolean done = database.sql("select readings from demo.loaded")
                .query(Boolean.class)
                .single();
        if (!done) {
            accounts.as("office", () -> {
                readings.load(until);
                return true;
            });
            database.sql("update demo.loaded set readings = true").update();
        }
    }

    private void person(String account, String displayName, Role role, @Nullable String house) {
        accounts.createIfAbsent(account, displayName, PASSWORD, role, house);
    }

    static Instant at(LocalDate day, int hour, int minute) {
        return day.atTime(LocalTime.of(hour, minute)).atZone(OFFICE).toInstant();
    }

    private String greeting() {
        int port = server.map(
                        s -> s.getWebServer() == null ? 0 : s.getWebServer().getPort())
                .orElse(0);
        return "\n\n  Oakum is ready: http://127.0.0.1:" + port + "/\n\n"
                + "  The demo firm is invented; its day is Thursday 14 May 2026.\n"
                + "  Accounts: principal, designer, site, mechanical, office, owner, consultant\n"
                + "  Password of each: " + PASSWORD + "\n";
    }

    /** What a chapter needs to tell its events. */
    final class Telling {
        /** Makes a person who belongs to one house. */
        void person(String account, String displayName, Role role, String house) {
            AsPortal.run(() -> DemoFirm.this.person(account, displayName, role, house));
        }

        /** Does something as somebody on a day; hour and minute are those of the office. */
        <T> T on(LocalDate day, int hour, int minute, String account, Supplier<T> work) {
            clock.shiftTo(at(day, hour, minute));
            return accounts.as(account, work);
        }

        /** Does something as somebody on a day. */
        void on(LocalDate day, int hour, int minute, String account, Runnable work) {
            on(day, hour, minute, account, () -> {
                work.run();
                return true;
            });
        }
    }
}
