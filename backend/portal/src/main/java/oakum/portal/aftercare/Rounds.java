package oakum.portal.aftercare;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Rounds: proposed from the windows of the filters, and kept as visits. */
@Service
public class Rounds {
    private final JdbcClient jdbc;
    private final Filters filters;
    private final Visits visits;
    private final Care care;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Rounds(JdbcClient jdbc, Filters filters, Visits visits, Care care, Access access, Audit audit, Clock clock) {
        this.jdbc = jdbc;
        this.filters = filters;
        this.visits = visits;
        this.care = care;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /** One filter of a round. */
    public record RoundFilter(String house, String filter) {}

    /** A round to be kept. */
    public record NewRound(String place, LocalDate day, List<RoundFilter> filters) {}

    /** Something else that is done at a house of the round. */
    public record AlsoThere(String house, String what, LocalDate dueOn) {}

    /** A round that the portal proposes. */
    public record ProposedRound(
            String place,
            LocalDate day,
            DayOfWeek weekday,
            List<FilterFollowUp> filters,
            List<AlsoThere> also,
            List<String> reasons,
            List<String> remarks) {}

    /** A round that is kept. */
    public record KeptRound(UUID id, String place, LocalDate day, DayOfWeek weekday, List<Visit> visits) {}

    /**
     * All rounds.
     *
     * @param later filters that need no round yet
     */
    public record RoundList(
            LocalDate today,
            List<ProposedRound> proposed,
            List<KeptRound> kept,
            List<FilterFollowUp> later,
            List<String> actions) {}

    /** What is proposed and what is kept, over all houses. */
    @Transactional(readOnly = true)
    public RoundList list() {
        access.require(Permission.PLAN_AFTERCARE);
        LocalDate today = LocalDate.now(clock);
        List<Visit> open =
                visits.list().stream().filter(v -> v.closedOn() == null).toList();
        Set<String> planned = open.stream()
                .filter(v -> v.plannedOn() != null)
                .flatMap(v -> v.filters().stream().map(f -> v.house() + "/" + f))
                .collect(Collectors.toSet());
        Map<String, FilterFollowUp> wanted = new TreeMap<>();
        filters.list().stream()
                .filter(f -> !planned.contains(name(f.house(), f.filter())))
                .forEach(f -> wanted.put(name(f.house(), f.filter()), f));
        List<RoundPlanner.Plan> plans = RoundPlanner.plan(
                today,
                wanted.values().stream().map(Rounds::wanted).toList(),
                anchors(open),
                open.stream()
                        .filter(v -> v.kind() != VisitKind.FILTER)
                        .map(v -> new RoundPlanner.Other(v.house(), v.label(), day(v)))
                        .toList(),
                care.usualDays());
        List<ProposedRound> proposed =
                plans.stream().map(plan -> proposed(plan, wanted)).toList();
        return new RoundList(today, proposed, kept(open), List.copyOf(wanted.values()), List.of("keep-round"));
    }

    /**
     * Keeps a round: one visit for each of its houses.
     *
     * @throws Problem 404 for a place or filter that is not there, 409 where a filter is on a planned visit already
     */
    @Transactional
    public KeptRound keep(NewRound round) {
        access.require(Permission.PLAN_AFTERCARE);
        care.requirePlace(round.place());
        if (round.filters().isEmpty()) {
            throw Problem.unprocessable("round", "filters", "A round goes to at least one filter.");
        }
        // two people who keep rounds at once must not both take a filter
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended('aftercare.rounds', 0))")
                .query()
                .singleRow();
        Map<String, List<FilterFollowUp>> byHouse = new TreeMap<>();
        Map<String, FilterFollowUp> known =
                filters.list().stream().collect(Collectors.toMap(f -> name(f.house(), f.filter()), f -> f));
        Set<String> planned = visits.list().stream()
                .filter(v -> v.closedOn() == null && v.plannedOn() != null)
                .flatMap(v -> v.filters().stream().map(f -> name(v.house(), f)))
                .collect(Collectors.toSet());
        for (RoundFilter wanted : round.filters()) {
            String name = name(wanted.house(), wanted.filter());
            FilterFollowUp filter = known.get(name);
            if (filter == null) {
                throw Problem.notFound("filter", name);
            }
            if (!planned.add(name)) {
                throw Problem.conflict("filter-planned", "The filter " + name + " is on a planned visit already.");
            }
            byHouse.computeIfAbsent(wanted.house(), h -> new ArrayList<>()).add(filter);
        }
        UUID id = UUID.randomUUID();
        jdbc.sql("insert into aftercare.round values (?, ?, ?, ?)")
                .params(id, round.place(), round.day(), access.caller().account())
                .update();
        byHouse.forEach((house, of) -> visits.insert(
                new Visits.NewVisit(
                        house,
                        VisitKind.FILTER,
                        of.stream()
                                .map(FilterFollowUp::dueOn)
                                .min(LocalDate::compareTo)
                                .orElseThrow(),
                        round.day(),
                        of.stream().map(FilterFollowUp::filter).toList()),
                id));
        audit.record("round-kept", null, round.place() + " on " + round.day() + ": " + byHouse.keySet() + ".");
        return kept(visits.list()).stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private List<RoundPlanner.Anchor> anchors(List<Visit> open) {
        List<RoundPlanner.Anchor> anchors = new ArrayList<>(jdbc.sql("select * from aftercare.trip order by on_day")
                .query((row, n) -> new RoundPlanner.Anchor(
                        row.getString("place"), row.getObject("on_day", LocalDate.class), row.getString("why"), null))
                .list());
        Map<String, String> places = jdbc
                .sql("select house, place from aftercare.care")
                .query((row, n) -> Map.entry(row.getString("house"), row.getString("place")))
                .list()
                .stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        for (Visit visit : open) {
            @Nullable LocalDate day = visit.plannedOn();
            String place = places.get(visit.house());
            if (day != null && place != null) {
                anchors.add(new RoundPlanner.Anchor(place, day, visit.house() + ", " + visit.label(), visit.house()));
            }
        }
        return anchors;
    }

    private List<KeptRound> kept(List<Visit> of) {
        Map<UUID, List<Visit>> byRound = of.stream()
                .filter(v -> v.round() != null)
                .collect(Collectors.groupingBy(v -> java.util.Objects.requireNonNull(v.round())));
        return jdbc
                .sql("select * from aftercare.round order by on_day, place")
                .query((row, n) -> {
                    LocalDate day = row.getObject("on_day", LocalDate.class);
                    UUID id = row.getObject("id", UUID.class);
                    return new KeptRound(
                            id, row.getString("place"), day, day.getDayOfWeek(), byRound.getOrDefault(id, List.of()));
                })
                .list()
                .stream()
                .filter(r -> !r.visits().isEmpty())
                .toList();
    }

    private static ProposedRound proposed(RoundPlanner.Plan plan, Map<String, FilterFollowUp> wanted) {
        return new ProposedRound(
                plan.place(),
                plan.day(),
                plan.day().getDayOfWeek(),
                plan.filters().stream()
                        .map(f -> java.util.Objects.requireNonNull(wanted.remove(name(f.house(), f.filter()))))
                        .toList(),
                plan.others().stream()
                        .map(o -> new AlsoThere(o.house(), o.what(), o.due()))
                        .toList(),
                plan.anchors().stream().map(RoundPlanner.Anchor::why).toList(),
                plan.remarks());
    }

    private static RoundPlanner.Wanted wanted(FilterFollowUp filter) {
        LocalDate opens = filter.windowOpensOn();
        return new RoundPlanner.Wanted(
                filter.house(),
                filter.filter(),
                filter.place(),
                opens == null ? filter.latestOn() : opens,
                filter.latestOn());
    }

    private static LocalDate day(Visit visit) {
        LocalDate planned = visit.plannedOn();
        return planned == null ? visit.dueOn() : planned;
    }

    private static String name(String house, String filter) {
        return house + "/" + filter;
    }
}
