package oakum.portal.aftercare;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Which houses are in care, at which place each is, and when somebody is there anyway. */
@Service
public class Care {
    private final JdbcClient jdbc;
    private final Access access;
    private final Audit audit;

    Care(JdbcClient jdbc, Access access, Audit audit) {
        this.jdbc = jdbc;
        this.access = access;
        this.audit = audit;
    }

    /** A place and its usual weekday. */
    @Schema(name = "CarePlace")
    public record Place(String name, DayOfWeek weekday) {}

    /** Somebody is at a place on a day, for another reason than filters. */
    public record Trip(String place, LocalDate on, String why) {}

    /** A house in care. */
    public record HouseInCare(
            String house, String place, @Nullable LocalDate handedOverOn) {}

    @Transactional(readOnly = true)
    public List<Place> places() {
        access.require(Permission.PLAN_AFTERCARE);
        return jdbc.sql("select * from aftercare.place order by name")
                .query((row, n) -> new Place(row.getString("name"), DayOfWeek.of(row.getInt("weekday"))))
                .list();
    }

    /** Makes a place known or gives it another weekday. */
    @Transactional
    public Place place(Place place) {
        access.require(Permission.PLAN_AFTERCARE);
        if (place.name().isBlank() || place.name().length() > 40) {
            throw Problem.unprocessable("place", "name", "A place's name has 1 to 40 characters.");
        }
        jdbc.sql(
                        "insert into aftercare.place values (?, ?) on conflict (name) do update set weekday = excluded.weekday")
                .params(place.name(), place.weekday().getValue())
                .update();
        audit.record("place-kept", null, place.name() + ", " + place.weekday() + ".");
        return place;
    }

    /**
     * Takes a house into care. With its day of handover, the visits after 30 days, 11 and 24 months become due.
     *
     * @throws Problem 404 for a place that is not known
     */
    @Transactional
    public HouseInCare take(HouseInCare care) {
        access.require(Permission.PLAN_AFTERCARE, care.house());
        requirePlace(care.place());
        boolean first = !jdbc.sql("select exists (select 1 from aftercare.visit where house = ? and kind <> 'filter')")
                .param(care.house())
                .query(Boolean.class)
                .single();
        jdbc.sql("""
                        insert into aftercare.care values (:house, :place, :handover)
                        on conflict (house) do update set place = excluded.place,
                            handed_over_on = coalesce(excluded.handed_over_on, aftercare.care.handed_over_on)""")
                .param("house", care.house())
                .param("place", care.place())
                .param("handover", care.handedOverOn(), java.sql.Types.DATE)
                .update();
        LocalDate handover = care.handedOverOn();
        if (first && handover != null) {
            for (VisitKind kind : List.of(VisitKind.DAYS_30, VisitKind.MONTHS_11, VisitKind.MONTHS_24)) {
                jdbc.sql("insert into aftercare.visit (id, house, kind, due_on) values (?, ?, ?, ?)")
                        .params(UUID.randomUUID(), care.house(), kind.id(), kind.dueAfter(handover))
                        .update();
            }
        }
        audit.record("house-in-care", care.house(), "In care at " + care.place() + ".");
        return care;
    }

    /** Notes that somebody is at a place on a day. */
    @Transactional
    public Trip trip(Trip trip) {
        access.require(Permission.PLAN_AFTERCARE);
        requirePlace(trip.place());
        jdbc.sql(
                        "insert into aftercare.trip values (?, ?, ?) on conflict (place, on_day) do update set why = excluded.why")
                .params(trip.place(), trip.on(), trip.why())
                .update();
        audit.record("trip-noted", null, trip.place() + " on " + trip.on() + ": " + trip.why() + ".");
        return trip;
    }

    Map<String, DayOfWeek> usualDays() {
        Map<String, DayOfWeek> usual = new TreeMap<>();
        places().forEach(place -> usual.put(place.name(), place.weekday()));
        return usual;
    }

    void requirePlace(String place) {
        boolean known = jdbc.sql("select exists (select 1 from aftercare.place where name = ?)")
                .param(place)
                .query(Boolean.class)
                .single();
        if (!known) {
            throw Problem.notFound("place", place);
        }
    }
}
