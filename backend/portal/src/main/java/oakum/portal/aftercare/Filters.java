package oakum.portal.aftercare;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import oakum.physics.trend.FilterLoadTrend;
import oakum.physics.trend.FilterRules;
import oakum.physics.trend.LoadSeries;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Houses;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import oakum.portal.reading.Readings;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The filters of all houses in care: how full, how fast, when due and why. */
@Service
public class Filters {
    /** An event explains a change that begins within this many days of it. */
    private static final int EVENT_DAYS = 7;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

    private final JdbcClient jdbc;
    private final Houses houses;
    private final Readings readings;
    private final CleanMarks marks;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Filters(
            JdbcClient jdbc,
            Houses houses,
            Readings readings,
            CleanMarks marks,
            Access access,
            Audit audit,
            Clock clock) {
        this.jdbc = jdbc;
        this.houses = houses;
        this.readings = readings;
        this.marks = marks;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /** Something that happened in a house. */
    public record HouseEvent(LocalDate onFrom, LocalDate onTo, String what) {}

    /** A filter as it is kept. */
    record Kept(String house, String place, NewFilter filter, CleanMark clean, long version) {}

    private record Sample(String house, String filter, LocalDate on, double load) {}

    /** Every filter of the houses that the caller may see, the first due first. */
    @Transactional(readOnly = true)
    public List<FilterFollowUp> list() {
        Map<String, HouseView> visible =
                houses.visible().stream().collect(Collectors.toMap(HouseView::id, house -> house));
        Map<String, List<Sample>> samples = jdbc
                .sql("select * from aftercare.load_sample order by taken_on")
                .query((row, n) -> new Sample(
                        row.getString("house"),
                        row.getString("filter"),
                        row.getObject("taken_on", LocalDate.class),
                        row.getDouble("load")))
                .list()
                .stream()
                .collect(Collectors.groupingBy(s -> s.house() + "/" + s.filter()));
        List<FilterFollowUp> followUps = new ArrayList<>();
        for (Kept kept : kept()) {
            HouseView house = visible.get(kept.house());
            if (house != null) {
                followUps.add(followUp(
                        kept,
                        house,
                        samples.getOrDefault(kept.house() + "/" + kept.filter().id(), List.of())));
            }
        }
        followUps.sort(Comparator.comparing(Place::of));
        return followUps;
    }

    /**
     * One page of that list.
     *
     * @param cursor where it goes on, or null
     * @param limit how many at most
     */
    @Transactional(readOnly = true)
    public Page<FilterFollowUp> page(@Nullable String cursor, int limit) {
        Place after = Cursor.key(cursor, 3, p -> new Place(LocalDate.parse(p.get(0)), p.get(1), p.get(2)));
        // the due day is computed, so that all must be known before the first can be told
        List<FilterFollowUp> rest = list().stream()
                .filter(f -> after == null || Place.of(f).compareTo(after) > 0)
                .limit(limit + 1L)
                .toList();
        return Cursor.page(rest, limit, f -> Cursor.join(f.dueOn().toString(), f.house(), f.filter()));
    }

    /** Where a filter stands in the list. */
    private record Place(LocalDate dueOn, String house, String filter) implements Comparable<Place> {
        private static final Comparator<Place> ORDER =
                Comparator.comparing(Place::dueOn).thenComparing(Place::house).thenComparing(Place::filter);

        static Place of(FilterFollowUp filter) {
            return new Place(filter.dueOn(), filter.house(), filter.filter());
        }

        @Override
        public int compareTo(Place other) {
            return ORDER.compare(this, other);
        }
    }

    /**
     * Begins to follow a filter.
     *
     * @throws Problem 404 for a house that is not in care, 409 where the house has a filter of this id, 422 where a
     *     member cannot be, or the clean drops are left out and no signed sheet has them
     */
    @Transactional
    public void add(String house, NewFilter filter) {
        access.require(Permission.PLAN_AFTERCARE, house);
        requireInCare(house);
        check(filter);
        CleanMark clean = cleanMark(house, filter);
        Map<String, @Nullable Object> said = new HashMap<>();
        said.put("house", house);
        said.put("id", filter.id());
        said.put("inHouse", filter.inHouse());
        said.put("size", filter.size());
        said.put("count", filter.count());
        said.put("grade", filter.grade());
        said.put("shelf", filter.shelfPlace());
        said.put("fitted", filter.fittedOn());
        said.put("designHigh", filter.designHighPa());
        said.put("designLow", filter.designLowPa());
        said.put("cleanHigh", clean.highPa());
        said.put("cleanLow", clean.lowPa());
        said.put("highFlow", filter.highFlowM3PerS());
        said.put("lowFlow", filter.lowFlowM3PerS());
        said.put("free", filter.freeStaticPa());
        said.put("dropSensor", filter.dropSensor());
        said.put("flowSensor", filter.flowSensor());
        int made = jdbc.sql("""
                        insert into aftercare.filter values (:house, :id, :inHouse, :size, :count, :grade, :shelf, :fitted,
                            :designHigh, :designLow, :cleanHigh, :cleanLow, :highFlow, :lowFlow, :free, :dropSensor,
                            :flowSensor) on conflict do nothing""").params(said).update();
        if (made == 0) {
            throw Problem.conflict("filter-exists", "This house already has a filter \"" + filter.id() + "\".");
        }
        marks.inForce(house, filter.id(), filter.fittedOn(), clean);
        audit.record("filter-added", house, "Filter " + filter.id() + ", " + filter.size() + ".");
    }

    /** As it is given, or from the signed drop sheet of this very filter, which is none from before it was put in. */
    private CleanMark cleanMark(String house, NewFilter filter) {
        Double high = filter.cleanHighPa();
        Double low = filter.cleanLowPa();
        if (high != null && low != null) {
            between("cleanHighPa", high, 0.5, 500);
            between("cleanLowPa", low, 0.1, 500);
            return new CleanMark(high, low);
        }
        if (high != null || low != null) {
            throw Problem.unprocessable(
                    "filter",
                    high == null ? "cleanHighPa" : "cleanLowPa",
                    "Give both clean drops, or leave both out to take them from the signed filter-drop sheet.");
        }
        ZoneId zone = ZoneId.of(houses.find(house).timeZone());
        return marks.measured(
                        house, filter.id(), filter.fittedOn().atStartOfDay(zone).toInstant())
                .map(m -> new CleanMark(m.dropAtPa(filter.highFlowM3PerS()), m.dropAtPa(filter.lowFlowM3PerS())))
                .orElseThrow(() -> Problem.unprocessable(
                        "clean-mark-missing",
                        "cleanHighPa",
                        "No signed filter-drop sheet of the filter \"" + filter.id() + "\" since " + filter.fittedOn()
                                + ": sign one, or give both clean drops."));
    }

    /** Keeps the load of a day as somebody gives it; the day's earlier value is replaced. */
    @Transactional
    public void sample(String house, String filter, LocalDate on, double load) {
        access.require(Permission.PLAN_AFTERCARE, house);
        require(house, filter);
        if (!(load > 0 && load <= 20)) {
            throw Problem.unprocessable(
                    "load-sample", "load", "A filter load is above 0 and at most 20; it was " + load + ".");
        }
        if (on.isAfter(today(houses.find(house)))) {
            throw Problem.unprocessable("load-sample", "on", "The day has not come yet.");
        }
        keepSample(house, filter, on, load, "typed");
        audit.record("filter-load-kept", house, "Filter " + filter + ", load " + load + " on " + on + ".");
    }

    /**
     * Computes the loads of days from the readings of pressure drop and airflow: each pair over the clean drop at its own
     * airflow, then the median of the day, of at least twenty pairs.
     *
     * @return how many days have a value
     * @throws Problem 422 where the filter has no sensors
     */
    @Transactional
    public int sampleFromReadings(String house, String filter, LocalDate from, LocalDate to) {
        access.require(Permission.PLAN_AFTERCARE, house);
        Kept followed = require(house, filter);
        NewFilter kept = followed.filter();
        if (kept.dropSensor() == null || kept.flowSensor() == null) {
            throw Problem.unprocessable(
                    "load-sample", "filter", "This filter has no sensors of pressure drop and airflow.");
        }
        ZoneId zone = ZoneId.of(houses.find(house).timeZone());
        CleanDrop clean = CleanDrop.of(kept, followed.clean());
        Map<LocalDate, List<Double>> byDay = new TreeMap<>();
        for (Readings.Pair pair : readings.pairs(
                house,
                kept.dropSensor(),
                kept.flowSensor(),
                from.atStartOfDay(zone).toInstant(),
                to.plusDays(1).atStartOfDay(zone).toInstant())) {
            // below half of the low airflow the fan is starting, stopping or off
            if (pair.second() >= kept.lowFlowM3PerS() / 2 && pair.first() > 0) {
                byDay.computeIfAbsent(pair.at().atZone(zone).toLocalDate(), d -> new ArrayList<>())
                        .add(pair.first() / clean.at(pair.second()));
            }
        }
        int days = 0;
        for (Map.Entry<LocalDate, List<Double>> day : byDay.entrySet()) {
            OptionalDouble load = LoadSeries.dailyMedian(day.getValue());
            if (load.isPresent()) {
                keepSample(house, filter, day.getKey(), load.getAsDouble(), "readings");
                days++;
            }
        }
        audit.record("filter-load-kept", house, "Filter " + filter + ", " + days + " days from readings.");
        return days;
    }

    /** Notes what happened in a house, so that it can explain what the readings do. */
    @Transactional
    public void event(String house, HouseEvent event) {
        access.require(Permission.PLAN_AFTERCARE, house);
        requireInCare(house);
        if (event.onTo().isBefore(event.onFrom())) {
            throw Problem.unprocessable("house-event", "onTo", "It ends before it begins.");
        }
        jdbc.sql("insert into aftercare.house_event values (?, ?, ?, ?, ?)")
                .params(UUID.randomUUID(), house, event.onFrom(), event.onTo(), event.what())
                .update();
        audit.record("house-event-noted", house, event.what() + ", " + event.onFrom() + " to " + event.onTo() + ".");
    }

    /** A new filter was put in: its clean mark counts from now on, the old ones are kept. */
    void fitted(String house, String filter, LocalDate on, CleanMark clean) {
        marks.inForce(house, filter, on, clean);
        jdbc.sql("""
                        update aftercare.filter set fitted_on = ?, clean_high_pa = ?, clean_low_pa = ?,
                            version = version + 1 where house = ? and id = ?""").params(on, clean.highPa(), clean.lowPa(), house, filter).update();
    }

    void keepSample(String house, String filter, LocalDate on, double load, String source) {
        jdbc.sql("""
                        insert into aftercare.load_sample values (?, ?, ?, ?, ?)
                        on conflict (house, filter, taken_on) do update set load = excluded.load, source = excluded.source""").params(house, filter, on, load, source).update();
    }

    /** The filter, for those who may see its house. */
    Kept require(String house, String filter) {
        access.require(Permission.VIEW_HOUSE, house);
        return find(house, filter).orElseThrow(() -> Problem.notFound("filter", filter));
    }

    /** The filter where it is followed; asks for no permission. */
    Optional<Kept> find(String house, String filter) {
        return kept().stream()
                .filter(k -> k.house().equals(house) && k.filter().id().equals(filter))
                .findFirst();
    }

    void requireInCare(String house) {
        boolean inCare = jdbc.sql("select exists (select 1 from aftercare.care where house = ?)")
                .param(house)
                .query(Boolean.class)
                .single();
        if (!inCare) {
            throw Problem.conflict("not-in-care", "House " + house + " is not in care yet; give it a place first.");
        }
    }

    private List<Kept> kept() {
        return jdbc.sql("select * from aftercare.filter f join aftercare.care c using (house) order by house, id")
                .query(Filters::filter)
                .list();
    }

    private static Kept filter(ResultSet row, int number) throws SQLException {
        return new Kept(
                row.getString("house"),
                row.getString("place"),
                new NewFilter(
                        row.getString("id"),
                        row.getString("in_house"),
                        row.getString("size"),
                        row.getInt("count"),
                        row.getString("grade"),
                        row.getString("shelf_place"),
                        row.getObject("fitted_on", LocalDate.class),
                        row.getDouble("design_high_pa"),
                        row.getDouble("design_low_pa"),
                        row.getDouble("clean_high_pa"),
                        row.getDouble("clean_low_pa"),
                        row.getDouble("high_flow_m3_per_s"),
                        row.getDouble("low_flow_m3_per_s"),
                        row.getObject("free_static_pa", Double.class),
                        row.getString("drop_sensor"),
                        row.getString("flow_sensor")),
                new CleanMark(row.getDouble("clean_high_pa"), row.getDouble("clean_low_pa")),
                row.getLong("version"));
    }

    private FilterFollowUp followUp(Kept kept, HouseView house, List<Sample> samples) {
        NewFilter filter = kept.filter();
        LocalDate today = today(house);
        List<Sample> since = samples.stream()
                .filter(s -> s.on().isAfter(filter.fittedOn()) && !s.on().isAfter(today))
                .toList();
        FilterLoadTrend.Output trend = trend(filter, kept.clean().highPa(), since, today, house.altitudeM());
        LocalDate earlySince = date(trend.fillingEarlySinceDate());
        return new FilterFollowUp(
                kept.house(),
                house.name(),
                kept.place(),
                filter.id(),
                filter.inHouse(),
                filter.size(),
                filter.count(),
                filter.grade(),
                filter.shelfPlace(),
                filter.fittedOn(),
                kept.clean().highPa(),
                kept.clean().lowPa(),
                filter.designHighPa(),
                filter.designLowPa(),
                trend.load(),
                LocalDate.parse(trend.loadDate()),
                trend.recentSlopePerD() == null ? null : trend.recentSlopePerD() * 7,
                trend.standing().label(),
                date(trend.windowOpensDate()),
                LocalDate.parse(trend.dueDate()),
                trend.dueBecause().label(),
                LocalDate.parse(trend.latestVisitDate()),
                LocalDate.parse(trend.dueEarliestDate()),
                LocalDate.parse(trend.dueLatestDate()),
                trend.fillingEarly(),
                earlySince,
                bend(kept.house(), trend, since),
                FilterRules.USUAL.windowLoad(),
                FilterRules.USUAL.changeLoad(),
                reason(kept.house(), trend),
                since.stream()
                        .map(s -> new FilterFollowUp.LoadPoint(s.on(), s.load()))
                        .toList(),
                kept.version(),
                access.may(Permission.PLAN_AFTERCARE, kept.house()) ? List.of("plan-visit", "keep-load") : List.of());
    }

    /**
     * The trend over loads that are normalised already: the clean drop at high airflow stands for the whole curve, so that
     * drop over curve gives the load back and the static budget is met at its own pressure.
     */
    private static FilterLoadTrend.Output trend(
            NewFilter filter, double cleanHighPa, List<Sample> samples, LocalDate today, double altitudeM) {
        List<FilterLoadTrend.Sample> days = new ArrayList<>();
        // a new filter is a load of one by definition of its clean mark
        days.add(day(filter.fittedOn(), cleanHighPa));
        samples.stream()
                .skip(Math.max(0, samples.size() - 399))
                .forEach(s -> days.add(day(s.on(), s.load() * cleanHighPa)));
        return FilterLoadTrend.CALCULATION
                .calculate(new FilterLoadTrend.Input(
                        filter.fittedOn().toString(),
                        today.toString(),
                        days,
                        1.0,
                        cleanHighPa,
                        0.0,
                        1.0,
                        1.0,
                        1.0,
                        filter.freeStaticPa(),
                        filter.freeStaticPa() == null ? null : 0.0,
                        altitudeM,
                        20.0,
                        FilterRules.USUAL))
                .output();
    }

    private static FilterLoadTrend.Sample day(LocalDate on, double dropPa) {
        return new FilterLoadTrend.Sample(on.toString(), dropPa, 1.0, null);
    }

    private String reason(String house, FilterLoadTrend.Output trend) {
        StringBuilder reason = new StringBuilder();
        reason.append(String.format(Locale.ROOT, "Filter load %.2f", trend.load()));
        if (trend.recentSlopePerD() != null) {
            reason.append(String.format(Locale.ROOT, ", %.3f more each week", trend.recentSlopePerD() * 7));
        }
        reason.append("; due ")
                .append(shown(LocalDate.parse(trend.dueDate())))
                .append(" because of ")
                .append(trend.dueBecause().label())
                .append('.');
        if (trend.fillingEarly() && trend.slopeBeforePerD() != null && trend.slopeSincePerD() != null) {
            reason.append(String.format(
                    Locale.ROOT,
                    " It fills early: %.3f a week before, %.3f since.",
                    trend.slopeBeforePerD() * 7,
                    trend.slopeSincePerD() * 7));
            reason.append(explained(house, date(trend.changeAfterDate()), date(trend.changeByDate())));
        }
        return reason.toString();
    }

    /** Where it began to fill early, with the day on which it would have been due otherwise. */
    private FilterFollowUp.@Nullable Bend bend(String house, FilterLoadTrend.Output trend, List<Sample> samples) {
        LocalDate after = date(trend.changeAfterDate());
        LocalDate by = date(trend.changeByDate());
        Double before = trend.slopeBeforePerD();
        Double since = trend.slopeSincePerD();
        if (!trend.fillingEarly() || after == null || by == null || before == null || since == null || !(before > 0)) {
            return null;
        }
        double then = samples.stream()
                .filter(s -> !s.on().isAfter(after))
                .reduce((first, last) -> last)
                .map(Sample::load)
                .orElse(1.0);
        long daysLeft = (long) Math.ceil((FilterRules.USUAL.changeLoad() - then) / before);
        return new FilterFollowUp.Bend(
                after, by, before * 7, since * 7, after.plusDays(daysLeft), events(house, after, by));
    }

    private List<HouseEvent> events(String house, LocalDate after, LocalDate by) {
        return jdbc.sql("""
                        select on_from, on_to, what from aftercare.house_event
                        where house = ? and on_from <= ? and on_to >= ? order by on_from""")
                .params(house, by.plusDays(EVENT_DAYS), after.minusDays(EVENT_DAYS))
                .query((row, n) -> new HouseEvent(
                        row.getObject("on_from", LocalDate.class),
                        row.getObject("on_to", LocalDate.class),
                        row.getString("what")))
                .list();
    }

    private String explained(String house, @Nullable LocalDate after, @Nullable LocalDate by) {
        if (after == null || by == null) {
            return "";
        }
        String between = " What changed between " + shown(after) + " and " + shown(by) + "?";
        List<HouseEvent> events = events(house, after, by);
        return between
                + events.stream()
                        .map(e -> " The record knows: " + e.what() + ", " + shown(e.onFrom())
                                + (e.onTo().equals(e.onFrom()) ? "" : " to " + shown(e.onTo())) + ".")
                        .collect(Collectors.joining());
    }

    private LocalDate today(HouseView house) {
        return LocalDate.now(clock.withZone(ZoneId.of(house.timeZone())));
    }

    private static String shown(LocalDate day) {
        return DAY.format(day);
    }

    private static @Nullable LocalDate date(@Nullable String text) {
        return text == null ? null : LocalDate.parse(text);
    }

    private static void check(NewFilter filter) {
        text("id", filter.id(), 40);
        text("inHouse", filter.inHouse(), 200);
        text("size", filter.size(), 40);
        text("grade", filter.grade(), 40);
        between("count", filter.count(), 1, 20);
        between("designHighPa", filter.designHighPa(), 0.5, 500);
        between("designLowPa", filter.designLowPa(), 0.1, 500);
        between("highFlowM3PerS", filter.highFlowM3PerS(), 0.005, 10);
        between("lowFlowM3PerS", filter.lowFlowM3PerS(), 0.001, filter.highFlowM3PerS());
        if (filter.freeStaticPa() != null) {
            between("freeStaticPa", filter.freeStaticPa(), 1, 2_000);
        }
    }

    private static void text(String field, String text, int most) {
        if (text.isBlank() || text.length() > most) {
            throw Problem.unprocessable("filter", field, field + " has 1 to " + most + " characters.");
        }
    }

    private static void between(String field, double value, double min, double max) {
        if (!(value >= min && value <= max)) {
            throw Problem.unprocessable(
                            "filter", field, field + " is " + min + " to " + max + "; it was " + value + ".")
                    .with("value", value)
                    .with("min", min)
                    .with("max", max);
        }
    }
}
