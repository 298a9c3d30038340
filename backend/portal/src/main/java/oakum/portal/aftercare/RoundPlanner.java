package oakum.portal.aftercare;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Makes rounds of due windows. A round goes to one place on one day. It goes on the day on which most windows of the
 * place are open, no later than the latest day of any filter that must be changed soon; among such days one on which
 * somebody is at the place anyway, else the last usual weekday, so that filters are used up. Everything here is the
 * firm's own rule; no published source.
 */
final class RoundPlanner {
    /** What must be visited within this time is planned now. */
    static final int HORIZON_DAYS = 56;

    /** A filter joins a round this many days before its window opens; a second drive costs more than the rest of it. */
    static final int EARLY_DAYS = 7;

    /** Other visits of a house join a round this near to their day. */
    static final int NEAR_DAYS = 28;

    /** Trips and planned visits further ahead than this may still move. */
    static final int ANCHOR_DAYS = 84;

    private RoundPlanner() {}

    /**
     * A filter that wants a visit.
     *
     * @param opens first day on which a visit makes sense
     * @param latest last day before it is overdue
     */
    record Wanted(String house, String filter, String place, LocalDate opens, LocalDate latest) {
        boolean fits(LocalDate day) {
            return !day.isBefore(opens.minusDays(EARLY_DAYS)) && !day.isAfter(latest);
        }
    }

    /** Somebody is at a place on a day; with a house where it is a planned visit there. */
    record Anchor(
            String place,
            LocalDate day,
            String why,
            @Nullable String house) {}

    /** Another thing that is due at a house. */
    record Other(String house, String what, LocalDate due) {}

    /**
     * A proposed round.
     *
     * @param anchors why the day was taken, where somebody is there anyway
     * @param others what else is done at its houses
     * @param remarks what is unusual, in sentences
     */
    record Plan(
            String place,
            LocalDate day,
            List<Wanted> filters,
            List<Anchor> anchors,
            List<Other> others,
            List<String> remarks) {}

    /**
     * Plans.
     *
     * @param usual the usual weekday of each place
     * @return by day; a filter is in at most one round, and one whose latest day is within the horizon is in exactly one
     */
    static List<Plan> plan(
            LocalDate today,
            List<Wanted> wanted,
            List<Anchor> anchors,
            List<Other> others,
            Map<String, DayOfWeek> usual) {
        Map<String, List<Wanted>> byPlace =
                wanted.stream().collect(Collectors.groupingBy(Wanted::place, TreeMap::new, Collectors.toList()));
        List<Plan> plans = new ArrayList<>();
        byPlace.forEach((place, filters) -> {
            DayOfWeek weekday = usual.getOrDefault(place, DayOfWeek.WEDNESDAY);
            List<Anchor> here = anchors.stream()
                    .filter(a -> a.place().equals(place) && !a.day().isBefore(today))
                    .toList();
            plans.addAll(place(today, place, filters, here, others, weekday));
        });
        plans.sort(Comparator.comparing(Plan::day).thenComparing(Plan::place));
        return plans;
    }

    private static List<Plan> place(
            LocalDate today,
            String place,
            List<Wanted> filters,
            List<Anchor> anchors,
            List<Other> others,
            DayOfWeek weekday) {
        List<Plan> plans = new ArrayList<>();
        Set<Wanted> open = new HashSet<>(filters);
        LocalDate horizon = today.plusDays(HORIZON_DAYS);
        while (true) {
            LocalDate deadline = open.stream()
                    .map(Wanted::latest)
                    .filter(latest -> !latest.isAfter(horizon))
                    .min(Comparator.naturalOrder())
                    .orElse(null);
            if (deadline == null) {
                break;
            }
            LocalDate day = day(today, deadline, open, anchors, weekday);
            plans.add(round(
                    place, day, take(open, f -> f.fits(day) || f.latest().isBefore(day)), anchors, others, weekday));
        }
        for (Anchor anchor : anchors) {
            boolean near = !anchor.day().isAfter(today.plusDays(ANCHOR_DAYS));
            List<Wanted> joining = near ? take(open, f -> f.fits(anchor.day())) : List.of();
            if (!joining.isEmpty()) {
                plans.add(round(place, anchor.day(), joining, anchors, others, weekday));
            }
        }
        return plans;
    }

    private static List<Wanted> take(Set<Wanted> open, Predicate<Wanted> which) {
        List<Wanted> taken = open.stream()
                .filter(which)
                .sorted(Comparator.comparing(Wanted::latest)
                        .thenComparing(Wanted::house)
                        .thenComparing(Wanted::filter))
                .toList();
        taken.forEach(open::remove);
        return taken;
    }

    private static LocalDate day(
            LocalDate today, LocalDate deadline, Set<Wanted> open, List<Anchor> anchors, DayOfWeek weekday) {
        Set<LocalDate> anchored = anchors.stream().map(Anchor::day).collect(Collectors.toSet());
        Stream<LocalDate> usual = Stream.iterate(
                today.with(TemporalAdjusters.next(weekday)), d -> !d.isAfter(deadline), d -> d.plusWeeks(1));
        return Stream.concat(anchored.stream().filter(d -> !d.isAfter(deadline)), usual)
                // the filter that sets the deadline must be in this round, or the next would be late
                .filter(d -> open.stream().anyMatch(f -> f.latest().equals(deadline) && f.fits(d)))
                .max(Comparator.<LocalDate>comparingLong(
                                d -> open.stream().filter(f -> f.fits(d)).count())
                        .thenComparing(anchored::contains)
                        .thenComparing(Comparator.naturalOrder()))
                .orElseGet(() -> unusual(today, deadline));
    }

    /** No usual day is left before the deadline: the last working day before it, or, overdue, the next one. */
    private static LocalDate unusual(LocalDate today, LocalDate deadline) {
        LocalDate tomorrow = working(today.plusDays(1), 1);
        LocalDate last = working(deadline, -1);
        return last.isBefore(tomorrow) ? tomorrow : last;
    }

    private static LocalDate working(LocalDate day, int step) {
        LocalDate working = day;
        while (working.getDayOfWeek().getValue() > DayOfWeek.FRIDAY.getValue()) {
            working = working.plusDays(step);
        }
        return working;
    }

    private static Plan round(
            String place,
            LocalDate day,
            List<Wanted> filters,
            List<Anchor> anchors,
            List<Other> others,
            DayOfWeek weekday) {
        List<Anchor> why = anchors.stream().filter(a -> a.day().equals(day)).toList();
        Set<String> houses = filters.stream().map(Wanted::house).collect(Collectors.toSet());
        List<Other> joining = others.stream()
                .filter(o -> houses.contains(o.house()) && Math.abs(ChronoUnit.DAYS.between(o.due(), day)) <= NEAR_DAYS)
                .toList();
        List<String> remarks = new ArrayList<>();
        for (Wanted filter : filters) {
            String name = filter.house() + " " + filter.filter();
            if (filter.latest().isBefore(day)) {
                remarks.add(name + " is late: its latest day was " + filter.latest()
                        + ", and no round could reach it by then.");
            } else if (filter.opens().isAfter(day)) {
                long days = ChronoUnit.DAYS.between(day, filter.opens());
                remarks.add(name + " comes " + days + (days == 1 ? " day" : " days") + " before its window opens.");
            }
        }
        if (why.isEmpty() && day.getDayOfWeek() != weekday) {
            remarks.add("Not the usual day of " + place + ": none is left before the latest day.");
        }
        if (houses.size() == 1 && why.isEmpty()) {
            remarks.add("One house only: the filter can go by post, and the owner sends a photo.");
        }
        return new Plan(place, day, filters, why, joining, remarks);
    }
}
