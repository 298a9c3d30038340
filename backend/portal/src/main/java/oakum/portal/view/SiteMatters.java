package oakum.portal.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import oakum.portal.houserecord.HouseView;
import oakum.portal.people.Role;
import oakum.portal.site.ClockShown;
import oakum.portal.site.CoverCheckListed;
import oakum.portal.site.CoverCheckState;
import oakum.portal.site.CoverChecks;
import oakum.portal.site.LapsedApproval;
import oakum.portal.site.LooseEndShown;
import oakum.portal.site.LooseEnds;
import oakum.portal.site.RowStop;
import oakum.portal.site.RunningClocks;
import oakum.portal.view.StartPage.StartMatter;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What the site asks of people: cover checks, running clocks, loose ends. */
@Component
class SiteMatters {
    private final CoverChecks checks;
    private final RunningClocks clocks;
    private final LooseEnds looseEnds;

    SiteMatters(CoverChecks checks, RunningClocks clocks, LooseEnds looseEnds) {
        this.checks = checks;
        this.clocks = clocks;
        this.looseEnds = looseEnds;
    }

    /** One cover check and the house it stands in. */
    record Check(HouseView house, CoverCheckListed check) {
        boolean stopped() {
            return check.state() == CoverCheckState.STOPPED;
        }
    }

    /** Every check that is not signed, those that stop the work first. */
    List<Check> unsigned(Sight sight) {
        return sight
                .all(house -> checks.list(house.id()).checks().stream()
                        .filter(check -> check.state() != CoverCheckState.SIGNED)
                        .map(check -> new Check(house, check)))
                .stream()
                .sorted(Comparator.comparing(Check::stopped).reversed())
                .toList();
    }

    /** Why it must stay open, or what is still to be looked at. */
    StartMatter matter(Check one) {
        CoverCheckListed check = one.check();
        List<String> reasons = new ArrayList<>();
        check.lapsed().forEach(lapsed -> reasons.add(lapsed(lapsed)));
        if (one.stopped()) {
            check.stops().forEach(stop -> reasons.add(reason(stop)));
        }
        int open = check.rowCount() - check.answeredCount();
        String looked = open == 0
                ? "Every row is answered"
                : check.answeredCount() + " of " + check.rowCount() + " rows answered";
        Role waitsFor = check.waitsFor();
        return new StartMatter(
                one.stopped() ? "stop" : check.state() == CoverCheckState.TO_SIGN ? "now" : "open",
                one.stopped() ? "Do not cover" : check.state() == CoverCheckState.TO_SIGN ? "To sign" : "To look at",
                one.house().id(),
                check.title(),
                "/houses/" + one.house().id() + "/cover-checks/" + check.code(),
                Words.say(reasons.stream().distinct().limit(2).toArray(String[]::new)),
                List.of(),
                Words.say(
                        "Before " + lower(check.coveredBy()) + " covers it",
                        looked,
                        waitsFor == null ? "" : "The " + waitsFor.label() + " signs"));
    }

    private static String lapsed(LapsedApproval lapsed) {
        return "The approval of \"" + lapsed.title() + "\" no longer stands";
    }

    private static String reason(RowStop stop) {
        String place = stop.place();
        return (place == null ? "" : place + ": ") + (place == null ? stop.reason() : lower(stop.reason()));
    }

    /** Clocks that run, the least to spare first. */
    List<StartMatter> clocks(Sight sight) {
        record Running(HouseView house, ClockShown clock) {}
        return sight
                .all(house -> clocks.list(house.id()).stream()
                        .filter(clock -> clock.stoppedOn() == null)
                        .map(clock -> new Running(house, clock)))
                .stream()
                .sorted(Comparator.comparingInt(r -> r.clock().daysToSpare()))
                .map(r -> new StartMatter(
                        r.clock().daysOver() > 0
                                ? "over"
                                : r.clock().daysToSpare() < r.clock().wantedDays() ? "now" : "under",
                        r.clock().daysOver() > 0
                                ? Words.count(r.clock().daysOver(), "day over", "days over")
                                : Words.count(r.clock().daysToSpare(), "day to spare", "days to spare"),
                        r.house().id(),
                        r.clock().label(),
                        "/houses/" + r.house().id() + "/site",
                        Words.sentence(r.clock().sentence()),
                        List.of(),
                        "Covered by " + sight.day(r.house(), r.clock().lastDay()) + " at the latest."))
                .toList();
    }

    /** Open loose ends asked of a role, the earliest day first. */
    List<StartMatter> looseEnds(Sight sight, @Nullable Role asked) {
        return looseEnds.listAll(asked).stream()
                .filter(end -> sight.sees(end.houseId()))
                .map(end -> matter(sight, end))
                .toList();
    }

    private static StartMatter matter(Sight sight, LooseEndShown end) {
        HouseView house = sight.house(end.houseId());
        return new StartMatter(
                end.overdue() ? "over" : end.dueOn().equals(sight.today(house)) ? "now" : "open",
                end.overdue()
                        ? "Overdue since " + sight.day(house, end.dueOn())
                        : "By " + Words.when(end.dueOn(), sight.today(house)),
                house.id(),
                end.title(),
                "/houses/" + house.id() + "/loose-ends",
                Words.sentence(end.because()),
                List.of(),
                "");
    }

    private static String lower(String text) {
        return text.isEmpty() || text.length() > 1 && Character.isUpperCase(text.charAt(1))
                ? text
                : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
