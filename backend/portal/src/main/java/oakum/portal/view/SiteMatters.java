package oakum.portal.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import oakum.portal.houserecord.HouseView;
import oakum.portal.people.Role;
import oakum.portal.site.ClockShown;
import oakum.portal.site.CoverCheckListed;
import oakum.portal.site.CoverCheckShown;
import oakum.portal.site.CoverCheckState;
import oakum.portal.site.CoverChecks;
import oakum.portal.site.LapsedApproval;
import oakum.portal.site.LooseEndShown;
import oakum.portal.site.LooseEnds;
import oakum.portal.site.RowAnswer;
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
            notRight(one).forEach(row -> reasons.add(reason(row)));
        }
        String looked = check.answeredCount() == check.rowCount()
                ? "every row is answered"
                : check.answeredCount() + " of " + check.rowCount() + " rows are answered";
        Role waitsFor = check.waitsFor();
        return new StartMatter(
                one.stopped() ? "stop" : check.state() == CoverCheckState.TO_SIGN ? "now" : "open",
                one.stopped() ? "Do not cover" : check.state() == CoverCheckState.TO_SIGN ? "To sign" : "To look at",
                one.house().id(),
                check.title(),
                "/houses/" + one.house().id() + "/cover-checks/" + check.code(),
                Words.say(reasons.stream().distinct().limit(2).toArray(String[]::new)),
                List.of(),
                Words.say((waitsFor == null
                                ? ""
                                : "no " + lower(check.coveredBy()) + " before the " + waitsFor.label()
                                        + " has signed; ")
                        + looked));
    }

    /** Rows that somebody looked at and found wrong; rows that nobody has looked at yet are not news. */
    private List<CoverCheckShown.CheckRowShown> notRight(Check one) {
        return checks.get(one.house().id(), one.check().code()).rows().stream()
                .filter(row -> row.stop() != null
                        && row.counting() != null
                        && row.counting().judged() == RowAnswer.NOT_RIGHT)
                .toList();
    }

    /** "Do not cover in North Tamarack: insulation and inner layer; mechanical rough-in", house by house. */
    static String mustNotBeCovered(List<Check> stopped) {
        Map<String, List<String>> byHouse = new LinkedHashMap<>();
        stopped.forEach(c -> byHouse.computeIfAbsent(c.house().name(), h -> new ArrayList<>())
                .add(lower(c.check().title())));
        List<String> said = new ArrayList<>();
        byHouse.forEach((house, titles) -> said.add("Do not cover in " + house + ": " + String.join("; ", titles)));
        return String.join(". ", said);
    }

    private static String lapsed(LapsedApproval lapsed) {
        return "The approval of \"" + lapsed.title() + "\" no longer stands";
    }

    private static String reason(CoverCheckShown.CheckRowShown row) {
        String place = row.place();
        String stop = Objects.requireNonNullElse(row.stop(), "");
        return place == null ? stop : place + ": " + lower(stop);
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
                                ? days(r.clock().daysOver(), "over")
                                : days(r.clock().daysToSpare(), "to spare"),
                        r.house().id(),
                        r.clock().label(),
                        "/houses/" + r.house().id() + "/site",
                        Words.sentence(r.clock().sentence()),
                        List.of(),
                        "Covered by " + sight.day(r.house(), r.clock().lastDay()) + " at the latest."))
                .toList();
    }

    private static String days(int days, String what) {
        return days + (days == 1 ? " day " : " days ") + what;
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
        return text.isEmpty() || (text.length() > 1 && Character.isUpperCase(text.charAt(1)))
                ? text
                : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
