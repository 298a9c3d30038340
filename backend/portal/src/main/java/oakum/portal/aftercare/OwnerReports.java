package oakum.portal.aftercare;

import static java.time.ZoneOffset.UTC;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import oakum.physics.calculation.Caution;
import oakum.portal.houserecord.Houses;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import oakum.portal.site.Photos;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What owners tell of their houses, and the office's answers. */
@Service
public class OwnerReports {
    private static final int PAGE = 50;
    /** How far ahead times are offered: a firm rule, no published source. */
    private static final int OFFERED_DAYS = 42;
    /** Two days to choose from: a firm rule, no published source. */
    private static final int LEAST_DAYS = 2;

    private static final Caution DANGER = new Caution(
            "Danger first",
            "Fire, smoke, a smell of gas or a carbon monoxide alarm: leave the house and call the emergency number."
                    + " Running water: close the main valve if you can reach it safely, then call the office. Nobody reads"
                    + " a report at night.");

    private final JdbcClient jdbc;
    private final Houses houses;
    private final Visits visits;
    private final Photos photos;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    OwnerReports(
            JdbcClient jdbc, Houses houses, Visits visits, Photos photos, Access access, Audit audit, Clock clock) {
        this.jdbc = jdbc;
        this.houses = houses;
        this.visits = visits;
        this.photos = photos;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Times at which somebody can come, and what to do first where it is dangerous.
     *
     * @param slots the first day first; empty where the house is not in care
     * @param actions what this person may do now: {@code report}
     */
    public record OfferedSlots(
            LocalDate today, List<OfferedSlot> slots, List<Caution> cautions, List<String> actions) {}

    /**
     * The times offered for a house: days on which somebody is at the house or near it anyway, else the usual weekday of
     * its place.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public OfferedSlots slots(String house) {
        LocalDate today = today(house);
        access.require(Permission.VIEW_REPORTS, house);
        return new OfferedSlots(
                today,
                offered(house, today),
                List.of(DANGER),
                access.may(Permission.REPORT, house) ? List.of("report") : List.of());
    }

    /**
     * Keeps a report.
     *
     * @throws Problem 403, 404; 422 {@code slot-not-offered}, {@code unknown-photo}
     */
    @Transactional
    public OwnerReport report(String house, OwnerReportSent sent) {
        LocalDate today = today(house);
        access.require(Permission.REPORT, house);
        photos.require(house, sent.photoIds());
        OfferedSlot.ChosenSlot slot = sent.slot();
        if (slot != null && offered(house, today).stream().noneMatch(o -> o.is(slot))) {
            throw Problem.unprocessable(
                    "slot-not-offered",
                    "slot",
                    slot.day() + " " + slot.half().label()
                            + " is not offered (any more). Take one of the offered times, or say in your own words when"
                            + " it suits.");
        }
        UUID id = UUID.randomUUID();
        Caller caller = access.caller();
        jdbc.sql("""
                        insert into aftercare.report
                            (id, house, what, in_house, photos, slot_day, slot_half, preference, reported_by_id,
                             reported_by, reported_at, answer_by)
                        values (:id, :house, :what, :inHouse, :photos, :day, :half, :preference, :byId, :by, :at,
                            :answerBy)""")
                .param("id", id)
                .param("house", house)
                .param("what", sent.what().strip())
                .param("inHouse", stripped(sent.inHouse()))
                .param("photos", sent.photoIds().toArray(new UUID[0]))
                .param("day", slot == null ? null : slot.day(), java.sql.Types.DATE)
                .param("half", slot == null ? null : slot.half().name(), java.sql.Types.VARCHAR)
                .param("preference", stripped(sent.preference()))
                .param("byId", caller.personId())
                .param("by", caller.displayName())
                .param("at", clock.instant().atOffset(UTC))
                .param("answerBy", nextWorkingDay(today))
                .update();
        audit.record("reported", house, "Reported: " + sent.what().strip(), path(house, id));
        return find(house, id);
    }

    /**
     * Answers a report; where the answer names a day, a visit is planned for it.
     *
     * @throws Problem 403, 404; 409 {@code report-answered}; 422 {@code day-past}, {@code not-in-care}
     */
    @Transactional
    public OwnerReport answer(String house, UUID id, String text, @Nullable LocalDate visitOn) {
        LocalDate today = today(house);
        access.require(Permission.PLAN_AFTERCARE, house);
        OwnerReport report = find(house, id);
        UUID visit = null;
        if (visitOn != null) {
            if (visitOn.isBefore(today)) {
                throw Problem.unprocessable(
                        "day-past", "visitOn", visitOn + " is over; today is " + today + " at the house.");
            }
            visit = visits.add(new Visits.NewVisit(house, VisitKind.REPORT, visitOn, visitOn, List.of()))
                    .id();
        }
        int answered = jdbc.sql("""
                        update aftercare.report
                        set answer = :answer, answered_by = :by, answered_at = :at, visit = :visit
                        where id = :id and answer is null""")
                .param("answer", text.strip())
                .param("by", access.caller().displayName())
                .param("at", clock.instant().atOffset(UTC))
                .param("visit", visit, java.sql.Types.OTHER)
                .param("id", report.id())
                .update();
        if (answered == 0) {
            throw Problem.conflict("report-answered", "This report is answered already; what it says stays.");
        }
        audit.record(
                "report-answered",
                house,
                "Answered: " + text.strip() + (visitOn == null ? "" : " Visit on " + visitOn + "."),
                path(house, id));
        return find(house, id);
    }

    /**
     * The reports of a house, the latest first.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public Page<OwnerReport> ofHouse(String house, @Nullable String cursor) {
        today(house);
        access.require(Permission.VIEW_REPORTS, house);
        return page("house = :house", Map.of("house", house), cursor);
    }

    /** The reports of every house that the caller may see, the latest first. */
    @Transactional(readOnly = true)
    public Page<OwnerReport> all(boolean waiting, @Nullable String cursor) {
        access.require(Permission.PLAN_AFTERCARE);
        return page(
                "(:all or house = any (:shared)) and (answer is null or not :waiting)",
                Map.of(
                        "all",
                        access.seesAllHouses(),
                        "shared",
                        access.sharedHouses().toArray(new String[0]),
                        "waiting",
                        waiting),
                cursor);
    }

    /** Reports that wait for an answer, of some houses, the oldest first; whoever calls it decides who may know. */
    @Transactional(readOnly = true)
    public List<OwnerReport> waiting(Set<String> of) {
        Map<String, LocalDate> today = new HashMap<>();
        return jdbc.sql("""
                        select * from aftercare.report where house = any (:houses) and answer is null
                        order by reported_at, id""")
                .param("houses", of.toArray(new String[0]))
                .query((row, n) -> report(row, today))
                .list();
    }

    /**
     * One report.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public OwnerReport get(String house, UUID id) {
        today(house);
        access.require(Permission.VIEW_REPORTS, house);
        return find(house, id);
    }

    /** Where a list goes on. */
    private record Place(Instant at, UUID id) {}

    private Page<OwnerReport> page(String where, Map<String, Object> values, @Nullable String cursor) {
        Map<String, LocalDate> today = new HashMap<>();
        Place after = Cursor.key(cursor, 2, p -> new Place(Instant.parse(p.get(0)), UUID.fromString(p.get(1))));
        List<OwnerReport> found = jdbc.sql("select * from aftercare.report where " + where + """
                         and (:at::timestamptz is null or (reported_at, id) < (:at, :id::uuid))
                        order by reported_at desc, id desc limit :limit""")
                .params(values)
                .param("at", after == null ? null : after.at().atOffset(UTC))
                .param("id", after == null ? null : after.id())
                .param("limit", PAGE + 1)
                .query((row, n) -> report(row, today))
                .list();
        return Cursor.page(found, PAGE, r -> Cursor.join(r.reportedAt().toString(), r.id().toString()));
    }

    private List<OfferedSlot> offered(String house, LocalDate today) {
        String place = jdbc.sql("select place from aftercare.care where house = ?")
                .param(house)
                .query(String.class)
                .optional()
                .orElse(null);
        if (place == null) {
            return List.of();
        }
        Map<LocalDate, String> days = new TreeMap<>();
        LocalDate first = today.plusDays(1);
        LocalDate last = today.plusDays(OFFERED_DAYS);
        jdbc.sql("""
                        select v.planned_on, v.house from aftercare.visit v join aftercare.care c on c.house = v.house
                        where c.place = :place and v.closed_on is null and v.planned_on between :first and :last
                        union all
                        select t.on_day, null from aftercare.trip t
                        where t.place = :place and t.on_day between :first and :last""")
                .param("place", place)
                .param("first", first)
                .param("last", last)
                .query((row, n) -> {
                    boolean here = house.equals(row.getString(2));
                    days.merge(
                            row.getObject(1, LocalDate.class),
                            here ? "we are at your house anyway" : "we are near your house anyway",
                            (a, b) -> a.contains("at your house") ? a : b);
                    return true;
                })
                .list();
        DayOfWeek usual = DayOfWeek.of(jdbc.sql("select weekday from aftercare.place where name = ?")
                .param(place)
                .query(Integer.class)
                .single());
        for (LocalDate day = first.with(TemporalAdjusters.nextOrSame(usual));
                days.size() < LEAST_DAYS;
                day = day.plusWeeks(1)) {
            days.putIfAbsent(day, "our usual day near your house");
        }
        List<OfferedSlot> slots = new ArrayList<>();
        days.forEach((day, because) ->
                Arrays.stream(HalfDay.values()).forEach(half -> slots.add(OfferedSlot.of(day, half, because))));
        return slots;
    }

    private OwnerReport find(String house, UUID id) {
        return jdbc.sql("select * from aftercare.report where house = ? and id = ?")
                .params(house, id)
                .query((row, n) -> report(row, new HashMap<>()))
                .optional()
                .orElseThrow(() -> Problem.notFound("report", id));
    }

    private OwnerReport report(ResultSet row, Map<String, LocalDate> today) throws SQLException {
        String house = row.getString("house");
        LocalDate day = row.getObject("slot_day", LocalDate.class);
        OfferedSlot.ChosenSlot slot =
                day == null ? null : new OfferedSlot.ChosenSlot(day, HalfDay.valueOf(row.getString("slot_half")));
        String answer = row.getString("answer");
        LocalDate answerBy = row.getObject("answer_by", LocalDate.class);
        boolean waits = answer == null;
        return new OwnerReport(
                row.getObject("id", UUID.class),
                house,
                row.getString("what"),
                row.getString("in_house"),
                List.of((UUID[]) row.getArray("photos").getArray()),
                slot,
                slot == null ? null : slot.half().label(),
                row.getString("preference"),
                row.getString("reported_by"),
                row.getObject("reported_at", OffsetDateTime.class).toInstant(),
                answerBy,
                waits ? OwnerReport.Level.ANSWER : OwnerReport.Level.NOTE,
                waits && answerBy.isBefore(today.computeIfAbsent(house, this::today)),
                answer,
                row.getString("answered_by"),
                instant(row.getObject("answered_at", OffsetDateTime.class)),
                row.getObject("visit", UUID.class),
                waits && access.may(Permission.PLAN_AFTERCARE, house) ? List.of("answer-report") : List.of());
    }

    /** Today by the calendar of the house; 404 where the caller may not see it. */
    private LocalDate today(String house) {
        return LocalDate.now(clock.withZone(ZoneId.of(houses.find(house).timeZone())));
    }

    private static LocalDate nextWorkingDay(LocalDate day) {
        LocalDate next = day.plusDays(1);
        while (next.getDayOfWeek().compareTo(DayOfWeek.FRIDAY) > 0) {
            next = next.plusDays(1);
        }
        return next;
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime at) {
        return at == null ? null : at.toInstant();
    }

    private static String stripped(@Nullable String text) {
        return text == null ? "" : text.strip();
    }

    private static String path(String house, UUID id) {
        return "/api/v1/houses/" + house + "/reports/" + id;
    }
}
