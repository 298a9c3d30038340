package oakum.portal.document;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Base64;
import java.util.Date;
import oakum.portal.aftercare.FilterFollowUp;
import oakum.portal.aftercare.Filters;
import oakum.portal.aftercare.Visit;
import oakum.portal.aftercare.Visits;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Accounts;
import oakum.portal.people.Audit;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The calendar feed of a person (RFC 5545): due windows of filters and visits, of the houses that this person may see at
 * the time of asking. The address holds a secret, since calendar programs cannot sign in.
 */
@Service
class Calendars {
    private static final int SECRET_BYTES = 32;

    private final JdbcClient jdbc;
    private final Filters filters;
    private final Visits visits;
    private final Access access;
    private final Accounts accounts;
    private final Audit audit;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    Calendars(
            JdbcClient jdbc,
            Filters filters,
            Visits visits,
            Access access,
            Accounts accounts,
            Audit audit,
            Clock clock) {
        this.jdbc = jdbc;
        this.filters = filters;
        this.visits = visits;
        this.access = access;
        this.accounts = accounts;
        this.audit = audit;
        this.clock = clock;
    }

    /** Makes a secret for the one who is signed in; an earlier one is worth nothing from now on. */
    @Transactional
    public String renew() {
        byte[] bytes = new byte[SECRET_BYTES];
        random.nextBytes(bytes);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        String account = access.caller().account();
        jdbc.sql("""
                        insert into document.calendar values (?, ?, ?)
                        on conflict (account) do update set secret_hash = excluded.secret_hash,
                            made_at = excluded.made_at""")
                .params(account, hash(secret), Timestamp.from(clock.instant()))
                .update();
        audit.record("calendar-renewed", null, "Calendar address of " + account + ".", null);
        return secret;
    }

    /**
     * The feed behind a secret.
     *
     * @throws Problem 404 for a secret that is none, or whose person may no longer sign in
     */
    @Transactional(readOnly = true)
    public String feed(String secret) {
        record Feed(String account, Instant madeAt) {}
        Feed feed = jdbc.sql("select account, made_at from document.calendar where secret_hash = ?")
                .param(hash(secret))
                .query((row, n) -> new Feed(
                        row.getString("account"), row.getTimestamp("made_at").toInstant()))
                .optional()
                .orElseThrow(Calendars::none);
        try {
            return accounts.as(feed.account(), () -> written(feed.madeAt()));
        } catch (Problem problem) {
            throw none();
        }
    }

    /**
     * Writes the calendar.
     *
     * @param stamp the same in every answer, so that an unchanged calendar is the same text and has the same tag
     */
    private String written(Instant stamp) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//Oakum//care//EN");
        calendar.setName("House care");
        calendar.setRefreshInterval(Duration.builder().hours(1).build());
        for (FilterFollowUp filter : filters.list()) {
            LocalDate opens = filter.windowOpensOn();
            LocalDate from = opens == null || opens.isAfter(filter.latestOn()) ? filter.latestOn() : opens;
            calendar.addEvent(event(
                    "filter." + filter.house() + "." + filter.filter(),
                    filter.house() + ": change filter, " + filter.count() + " × " + filter.size(),
                    filter.reason() + " Latest day for a planned visit: " + filter.latestOn() + ".",
                    filter.houseName() + ", " + filter.place(),
                    from,
                    filter.latestOn(),
                    stamp));
        }
        for (Visit visit : visits.list()) {
            LocalDate planned = visit.plannedOn();
            LocalDate closed = visit.closedOn();
            LocalDate day = closed != null ? closed : planned != null ? planned : visit.dueOn();
            String what = closed != null ? "done" : planned != null ? "planned" : "due";
            calendar.addEvent(event(
                    "visit." + visit.id(),
                    visit.house() + ": " + visit.label() + ", " + what,
                    visit.round() == null
                            ? "Due on " + visit.dueOn() + "."
                            : "On a round. Due on " + visit.dueOn() + ".",
                    null,
                    day,
                    day,
                    stamp));
        }
        return Biweekly.write(calendar).go();
    }

    private static VEvent event(
            String id,
            String summary,
            String description,
            @Nullable String location,
            LocalDate first,
            LocalDate last,
            Instant stamp) {
        VEvent event = new VEvent();
        event.setUid(id + "@oakum");
        event.setDateTimeStamp(Date.from(stamp));
        event.setSummary(summary);
        event.setDescription(description);
        if (location != null) {
            event.setLocation(location);
        }
        event.setDateStart(new DateStart(date(first)));
        // the end of an event of whole days is the day after (RFC 5545, 3.6.1)
        event.setDateEnd(new DateEnd(date(last.plusDays(1))));
        event.setTransparency(true);
        return event;
    }

    /** A day without a time, whatever time zone the portal runs in. */
    private static ICalDate date(LocalDate day) {
        return new ICalDate(new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()), false);
    }

    private static Problem none() {
        return Problem.notFound("calendar", "of this address");
    }

    private static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
