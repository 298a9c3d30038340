package oakum.portal.aftercare;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import oakum.physics.trend.FilterRules;
import oakum.portal.http.Cursor;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Visits to houses in care, from planning to closing. */
@Service
public class Visits {
    /** Stands in a cursor for the day of closing of a visit that is open. */
    private static final String OPEN = "open";

    private final JdbcClient jdbc;
    private final Filters filters;
    private final Access access;
    private final Audit audit;
    private final JsonMapper json;

    Visits(JdbcClient jdbc, Filters filters, Access access, Audit audit, JsonMapper json) {
        this.jdbc = jdbc;
        this.filters = filters;
        this.access = access;
        this.audit = audit;
        this.json = json;
    }

    /** A visit to be made. */
    public record NewVisit(
            String house,
            VisitKind kind,
            LocalDate dueOn,
            @Nullable LocalDate plannedOn,
            List<String> filters) {}

    /** All visits of the houses that the caller may see, open ones first. */
    @Transactional(readOnly = true)
    public List<Visit> list() {
        return list(null, null);
    }

    /**
     * One page of that list.
     *
     * @param cursor where it goes on, or null
     * @param limit how many at most
     */
    @Transactional(readOnly = true)
    public Page<Visit> page(@Nullable String cursor, int limit) {
        Place after = Cursor.key(
                cursor,
                4,
                p -> new Place(
                        p.get(0).equals(OPEN) ? null : LocalDate.parse(p.get(0)),
                        LocalDate.parse(p.get(1)),
                        p.get(2),
                        UUID.fromString(p.get(3))));
        return Cursor.page(
                list(after, limit + 1),
                limit,
                v -> Cursor.join(
                        v.closedOn() == null ? OPEN : v.closedOn().toString(),
                        (v.plannedOn() == null ? v.dueOn() : v.plannedOn()).toString(),
                        v.house(),
                        v.id().toString()));
    }

    /** Where a visit stands in the list. */
    private record Place(@Nullable LocalDate closedOn, LocalDate day, String house, UUID id) {}

    private List<Visit> list(@Nullable Place after, @Nullable Integer limit) {
        return jdbc.sql("""
                        select * from aftercare.visit
                        where (:all or house = any(:shared))
                          and (not :later
                            or coalesce(closed_on, 'infinity') < coalesce(:closed::date, 'infinity')
                            or coalesce(closed_on, 'infinity') = coalesce(:closed::date, 'infinity')
                              and (coalesce(planned_on, due_on), house, id) > (:day::date, :house, :id::uuid))
                        order by closed_on desc nulls first, coalesce(planned_on, due_on), house, id
                        limit :limit""")
                .param("all", access.seesAllHouses())
                .param("shared", access.sharedHouses().toArray(new String[0]))
                .param("later", after != null)
                .param("closed", after == null ? null : after.closedOn(), Types.DATE)
                .param("day", after == null ? null : after.day(), Types.DATE)
                .param("house", after == null ? null : after.house(), Types.VARCHAR)
                .param("id", after == null ? null : after.id(), Types.OTHER)
                .param("limit", limit, Types.INTEGER)
                .query(this::visit)
                .list();
    }

    /**
     * One visit.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public Visit get(UUID id) {
        Visit visit = find(id, "");
        access.require(Permission.VIEW_HOUSE, visit.house());
        return visit;
    }

    /** Makes a visit. */
    @Transactional
    public Visit add(NewVisit visit) {
        access.require(Permission.PLAN_AFTERCARE, visit.house());
        filters.requireInCare(visit.house());
        visit.filters().forEach(filter -> filters.require(visit.house(), filter));
        UUID id = insert(visit, null);
        audit.record("visit-made", visit.house(), visit.kind().label() + ", due " + visit.dueOn() + ".");
        return find(id, "");
    }

    UUID insert(NewVisit visit, @Nullable UUID round) {
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into aftercare.visit (id, house, kind, due_on, planned_on, round, filters)
                        values (:id, :house, :kind, :due, :planned, :round, :filters)""")
                .param("id", id)
                .param("house", visit.house())
                .param("kind", visit.kind().id())
                .param("due", visit.dueOn())
                .param("planned", visit.plannedOn(), Types.DATE)
                .param("round", round, Types.OTHER)
                .param("filters", visit.filters().toArray(new String[0]))
                .update();
        return id;
    }

    /**
     * Plans a visit for a day, or takes its day away.
     *
     * @throws Problem 409 where it is closed, 412 and 428 as everywhere
     */
    @Transactional
    public Visit plan(UUID id, @Nullable LocalDate plannedOn, @Nullable String ifMatch) {
        Visit visit = locked(id);
        EntityTag.require(ifMatch, visit.version());
        if (visit.closedOn() != null) {
            throw closed();
        }
        jdbc.sql("update aftercare.visit set planned_on = :planned, version = version + 1 where id = :id")
                .param("planned", plannedOn, Types.DATE)
                .param("id", id)
                .update();
        audit.record("visit-planned", visit.house(), visit.label() + ", planned for " + plannedOn + ".");
        return find(id, "");
    }

    /**
     * Closes a visit: stock falls, and the drops as left become the new clean mark of each filter. The same closing sent
     * again changes nothing.
     *
     * @throws Problem 422 where a filter as left is not within 15 % of its design, is of another size, or is not one of the
     *     visit; 409 where it was closed with other values or the shelf has too few. The visit stays open then.
     */
    @Transactional
    public Visit close(UUID id, VisitClosing closing) {
        Visit visit = locked(id);
        if (visit.closedOn() != null) {
            VisitClosing before = json.readValue(
                    jdbc.sql("select closing from aftercare.visit where id = ?")
                            .param(id)
                            .query(String.class)
                            .single(),
                    VisitClosing.class);
            if (before.equals(closing)) {
                return visit;
            }
            throw closed();
        }
        List<String> named = closing.filters().stream()
                .map(VisitClosing.ChangedFilter::filter)
                .toList();
        if (!Set.copyOf(named).equals(Set.copyOf(visit.filters()))
                || named.size() != visit.filters().size()) {
            throw Problem.unprocessable(
                    "visit-filters",
                    "filters",
                    "This visit is for the filters " + visit.filters() + ", each once; got " + named + ".");
        }
        for (VisitClosing.ChangedFilter changed : closing.filters()) {
            change(visit.house(), closing.doneOn(), changed);
        }
        jdbc.sql("update aftercare.visit set closed_on = ?, closing = ?::jsonb, version = version + 1 where id = ?")
                .params(closing.doneOn(), json.writeValueAsString(closing), id)
                .update();
        audit.record("visit-closed", visit.house(), visit.label() + " done on " + closing.doneOn() + ".");
        return find(id, "");
    }

    private void change(String house, LocalDate on, VisitClosing.ChangedFilter changed) {
        Filters.Kept followed = filters.require(house, changed.filter());
        NewFilter filter = followed.filter();
        if (!plain(changed.sizeReadOff()).equals(plain(filter.size()))) {
            throw Problem.unprocessable(
                    "filter-size",
                    "filters." + changed.filter() + ".sizeReadOff",
                    "The filter put in reads " + changed.sizeReadOff() + "; this rack takes " + filter.size()
                            + ". The visit stays open.");
        }
        if (on.isBefore(filter.fittedOn())) {
            throw Problem.unprocessable(
                    "visit-day", "doneOn", "The filter now in place was put in later, on " + filter.fittedOn() + ".");
        }
        requireLikeDesign(filter, changed.asLeft());
        filters.keepSample(
                house,
                filter.id(),
                on,
                changed.asFound().highPa() / followed.clean().highPa(),
                "as found");
        filters.fitted(
                house,
                filter.id(),
                on,
                new CleanMark(changed.asLeft().highPa(), changed.asLeft().lowPa()));
        int taken = jdbc.sql("""
                        update aftercare.stock set on_shelf = on_shelf - :count, version = version + 1
                        where size = :size and grade = :grade and on_shelf >= :count""")
                .param("count", filter.count())
                .param("size", filter.size())
                .param("grade", filter.grade())
                .update();
        if (taken == 0) {
            throw Problem.conflict(
                    "stock-short",
                    "The shelf list has fewer than " + filter.count() + " of " + filter.size() + " " + filter.grade()
                            + ". Correct the stock first, then close the visit.");
        }
    }

    private static void requireLikeDesign(NewFilter filter, VisitClosing.MeasuredDrop left) {
        double tolerance = FilterRules.USUAL.cleanMarkToleranceFraction();
        List<Map<String, Object>> errors = new ArrayList<>();
        outside(errors, filter.id(), "highPa", left.highPa(), filter.designHighPa(), tolerance);
        outside(errors, filter.id(), "lowPa", left.lowPa(), filter.designLowPa(), tolerance);
        if (!errors.isEmpty()) {
            throw new Problem(
                            HttpStatus.UNPROCESSABLE_CONTENT,
                            "as-left-not-like-design",
                            "The new filter's drop is not within " + Math.round(tolerance * 100)
                                    + " % of its design, so the visit stays open. Look at size, grade, gap and direction.")
                    .with("errors", errors);
        }
    }

    private static void outside(
            List<Map<String, Object>> errors,
            String filter,
            String field,
            double measured,
            double design,
            double tolerance) {
        double min = design * (1 - tolerance);
        double max = design * (1 + tolerance);
        if (!(measured >= min && measured <= max)) {
            Map<String, Object> error = new LinkedHashMap<>();
            error.put("field", "filters." + filter + ".asLeft." + field);
            error.put("value", measured);
            error.put("design", design);
            error.put("min", min);
            error.put("max", max);
            error.put("unit", "Pa");
            error.put("source", "firm rules");
            errors.add(error);
        }
    }

    /** 16x25x4 and 16×25×4 are the same. */
    private static String plain(String size) {
        return size.replace('×', 'x').replace('X', 'x').replace(" ", "");
    }

    private Visit locked(UUID id) {
        Visit visit = find(id, " for update");
        access.require(Permission.PLAN_AFTERCARE, visit.house());
        return visit;
    }

    private Visit find(UUID id, String lock) {
        return jdbc.sql("select * from aftercare.visit where id = ?" + lock)
                .param(id)
                .query(this::visit)
                .optional()
                .orElseThrow(() -> Problem.notFound("visit", id));
    }

    private static Problem closed() {
        return Problem.conflict("visit-closed", "This visit is closed already, with other values; what it says stays.");
    }

    private Visit visit(ResultSet row, int number) throws SQLException {
        String house = row.getString("house");
        VisitKind kind = VisitKind.of(row.getString("kind"));
        LocalDate closedOn = row.getObject("closed_on", LocalDate.class);
        boolean may = closedOn == null && access.may(Permission.PLAN_AFTERCARE, house);
        return new Visit(
                row.getObject("id", UUID.class),
                house,
                kind,
                kind.label(),
                row.getObject("due_on", LocalDate.class),
                row.getObject("planned_on", LocalDate.class),
                row.getObject("round", UUID.class),
                Arrays.stream((String[]) row.getArray("filters").getArray()).collect(Collectors.toList()),
                closedOn,
                row.getLong("version"),
                may ? List.of("plan", "close") : List.of());
    }
}
