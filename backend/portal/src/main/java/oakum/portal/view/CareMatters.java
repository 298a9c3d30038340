package oakum.portal.view;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import oakum.portal.aftercare.FilterFollowUp;
import oakum.portal.aftercare.Filters;
import oakum.portal.aftercare.OwnerReports;
import oakum.portal.aftercare.Visit;
import oakum.portal.aftercare.Visits;
import oakum.portal.houserecord.HouseView;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** What houses in care ask of people: filters and visits. */
@Component
class CareMatters {
    private final Filters filters;
    private final Visits visits;
    private final OwnerReports reports;

    CareMatters(Filters filters, Visits visits, OwnerReports reports) {
        this.filters = filters;
        this.visits = visits;
        this.reports = reports;
    }

    List<FilterFollowUp> filters(Sight sight) {
        return filters.list().stream().filter(f -> sight.sees(f.house())).toList();
    }

    /** Visits that are still to be made, the first day first. */
    List<Visit> open(Sight sight) {
        return visits.list().stream()
                .filter(v -> v.closedOn() == null && sight.sees(v.house()))
                .sorted(Comparator.comparing(CareMatters::day))
                .toList();
    }

    static LocalDate day(Visit visit) {
        return Optional.ofNullable(visit.plannedOn()).orElse(visit.dueOn());
    }

    /** What owners reported and nobody answered, the first report first. */
    List<StartMatter> reports(Sight sight) {
        return reports.waiting(sight.houses().stream().map(HouseView::id).collect(Collectors.toSet())).stream()
                .map(r -> new StartMatter(
                        r.overdue() ? "over" : "look",
                        "Answer",
                        r.house(),
                        "Report by the " + r.reportedBy(),
                        "/houses/" + r.house() + "/owner",
                        "“" + r.what() + "”",
                        r.overdue() ? List.of("overdue") : List.of(),
                        "Answer by " + Words.day(r.answerBy(), sight.today()) + "."))
                .toList();
    }

    /** Filters that began to fill faster, and filters that are past their day. */
    List<StartMatter> alerts(Sight sight) {
        return filters(sight).stream()
                .filter(f -> f.fillingEarly() || f.dueOn().isBefore(sight.today()))
                .map(f -> new StartMatter(
                        f.dueOn().isBefore(sight.today()) ? "now" : "look",
                        f.dueOn().isBefore(sight.today()) ? "Now" : "Soon",
                        f.house(),
                        f.fillingEarly() ? "Filter is filling early" : "Filter is past its day",
                        "/filters/" + f.house() + "/" + f.filter(),
                        Words.sentence(f.reason()),
                        List.of(),
                        "Change it by " + Words.day(f.latestOn(), sight.today()) + "."))
                .toList();
    }
}
