package oakum.portal.site;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Running clocks: what may stand exposed only for so many days. */
@Service
@Transactional
public class RunningClocks {
    private final JdbcClient jdbc;
    private final HouseAccess house;
    private final Access access;
    private final Audit audit;

    RunningClocks(JdbcClient jdbc, HouseAccess house, Access access, Audit audit) {
        this.jdbc = jdbc;
        this.house = house;
        this.access = access;
        this.audit = audit;
    }

    /** The clocks of a house, the one with the least to spare first. */
    @Transactional(readOnly = true)
    public List<ClockShown> list(String houseId) {
        house.require(Permission.VIEW_HOUSE, houseId);
        LocalDate today = house.today(houseId);
        return jdbc
                .sql("select * from site.running_clock where house_id = :house order by id")
                .param("house", houseId)
                .query((row, n) -> kept(row))
                .list()
                .stream()
                .map(kept -> shown(houseId, kept, kept.exposure(), today))
                .sorted(java.util.Comparator.comparingInt(ClockShown::daysToSpare))
                .toList();
    }

    /**
     * One clock.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public ClockShown get(String houseId, String id) {
        house.require(Permission.VIEW_HOUSE, houseId);
        Kept kept = kept(houseId, id);
        return shown(houseId, kept, kept.exposure(), house.today(houseId));
    }

    /**
     * Starts a clock.
     *
     * @throws Problem 409 {@code clock-exists}; 422 {@code dates-out-of-order}
     */
    public ClockShown start(String houseId, NewClock clock) {
        house.require(Permission.ANSWER_CHECK, houseId);
        requireOrder(clock.startedOn(), clock.plannedOn(), null, house.today(houseId));
        int made = jdbc.sql("""
                        insert into site.running_clock
                            (house_id, id, label, started_on, limit_days, limit_source, planned_on, version)
                        values (:house, :id, :label, :started, :limit, :source, :planned, 1)
                        on conflict do nothing
                        """)
                .param("house", houseId)
                .param("id", clock.id())
                .param("label", clock.label().strip())
                .param("started", clock.startedOn())
                .param("limit", clock.limitDays())
                .param("source", clock.limitSource().strip())
                .param("planned", clock.plannedOn())
                .update();
        if (made == 0) {
            throw Problem.conflict("clock-exists", "House " + houseId + " has a clock \"" + clock.id() + "\" already.");
        }
        ClockShown shown = get(houseId, clock.id());
        audit.record("clock-started", houseId, shown.label() + ": " + shown.sentence(), path(houseId, clock.id()));
        return shown;
    }

    /**
     * Plans another day of covering, or stops the clock because it is covered.
     *
     * @param ifMatch the ETag of what the person read
     * @throws Problem 404, 412, 428; 422 {@code dates-out-of-order}
     */
    public ClockShown change(String houseId, String id, @Nullable String ifMatch, ClockChange change) {
        house.require(Permission.ANSWER_CHECK, houseId);
        Kept kept = kept(houseId, id);
        EntityTag.require(ifMatch, kept.version());
        requireOrder(kept.exposure().startedOn(), change.plannedOn(), change.stoppedOn(), house.today(houseId));
        int changed = jdbc.sql("""
                        update site.running_clock set planned_on = :planned, stopped_on = :stopped, version = version + 1
                        where house_id = :house and id = :id and version = :version
                        """)
                .param("planned", change.plannedOn())
                .param("stopped", change.stoppedOn())
                .param("house", houseId)
                .param("id", id)
                .param("version", kept.version())
                .update();
        if (changed == 0) {
            // somebody was faster between the reading and the writing
            EntityTag.require(ifMatch, kept(houseId, id).version());
        }
        ClockShown shown = get(houseId, id);
        audit.record("clock-changed", houseId, shown.label() + ": " + shown.sentence(), path(houseId, id));
        return shown;
    }

    /**
     * What another day of covering would do; saves nothing.
     *
     * @throws Problem 404; 422 {@code dates-out-of-order}
     */
    @Transactional(readOnly = true)
    public ClockTrialShown trial(String houseId, String id, LocalDate plannedOn) {
        house.require(Permission.VIEW_HOUSE, houseId);
        LocalDate today = house.today(houseId);
        Kept kept = kept(houseId, id);
        requireOrder(kept.exposure().startedOn(), plannedOn, null, today);
        return new ClockTrialShown(
                shown(houseId, kept, kept.exposure(), today),
                shown(houseId, kept, kept.exposure().plannedFor(plannedOn), today));
    }

    private record Kept(String id, String label, String limitSource, Exposure exposure, long version) {}

    private Kept kept(String houseId, String id) {
        return jdbc.sql("select * from site.running_clock where house_id = :house and id = :id")
                .param("house", houseId)
                .param("id", id)
                .query((row, n) -> kept(row))
                .optional()
                .orElseThrow(() -> Problem.notFound("running clock", id));
    }

    private static Kept kept(ResultSet row) throws SQLException {
        return new Kept(
                row.getString("id"),
                row.getString("label"),
                row.getString("limit_source"),
                new Exposure(
                        row.getObject("started_on", LocalDate.class),
                        row.getInt("limit_days"),
                        row.getObject("planned_on", LocalDate.class),
                        row.getObject("stopped_on", LocalDate.class)),
                row.getLong("version"));
    }

    private ClockShown shown(String houseId, Kept kept, Exposure e, LocalDate today) {
        int spare = e.daysToSpare(today);
        Exposure.State state = e.state(today);
        boolean mayMove = access.may(Permission.ANSWER_CHECK, houseId);
        return new ClockShown(
                kept.id(),
                kept.label(),
                e.startedOn(),
                e.limitDays(),
                kept.limitSource(),
                e.plannedOn(),
                e.stoppedOn(),
                today,
                e.daysUsed(today),
                e.plannedDay(),
                spare,
                Math.max(0, -spare),
                Exposure.WANTED_DAYS,
                e.lastDay(),
                e.tellOn(),
                !today.isBefore(e.tellOn()),
                state.name(),
                state.label(),
                e.sentence(today),
                kept.version(),
                mayMove && e.stoppedOn() == null ? List.of("change-clock", "try-clock") : List.of("try-clock"));
    }

    private static void requireOrder(
            LocalDate started, @Nullable LocalDate planned, @Nullable LocalDate stopped, LocalDate today) {
        if (planned != null && planned.isBefore(started)) {
            throw Problem.unprocessable(
                    "dates-out-of-order",
                    "plannedOn",
                    "Covering on " + planned + " lies before the start on " + started + ".");
        }
        if (stopped != null && (stopped.isBefore(started) || stopped.isAfter(today))) {
            throw Problem.unprocessable(
                    "dates-out-of-order",
                    "stoppedOn",
                    "The day of covering must lie between the start on " + started + " and today, " + today + ".");
        }
        if (started.isAfter(today)) {
            throw Problem.unprocessable(
                    "dates-out-of-order", "startedOn", "A clock cannot start after today, " + today + ".");
        }
    }

    private static String path(String houseId, String id) {
        return "/api/v1/houses/" + houseId + "/clocks/" + id;
    }
}
