package oakum.portal.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oakum.physics.calculation.Unit;
import oakum.portal.aftercare.FilterFollowUp;
import oakum.portal.aftercare.Visit;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.MoisturePart;
import oakum.portal.houserecord.Parts;
import oakum.portal.houserecord.WaterPart;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import oakum.portal.reading.HouseToday;
import oakum.portal.reading.HouseTodays;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The owner, in plain words: is the house all right, anything to do, next visit, how do I, report. */
@Component
class OwnerStart implements Start {
    private static final int MOST_VISITS = 3;

    private final CareMatters care;
    private final ApprovalMatters approvals;
    private final SiteMatters site;
    private final HouseRecord record;
    private final HouseTodays todays;
    private final Access access;

    OwnerStart(
            CareMatters care,
            ApprovalMatters approvals,
            SiteMatters site,
            HouseRecord record,
            HouseTodays todays,
            Access access) {
        this.todays = todays;
        this.access = access;
        this.care = care;
        this.approvals = approvals;
        this.site = site;
        this.record = record;
    }

    @Override
    public Role role() {
        return Role.OWNER;
    }

    @Override
    public StartPage compose(Sight sight) {
        List<FilterFollowUp> filters = care.filters(sight);
        List<SiteMatters.Check> kept =
                site.unsigned(sight).stream().filter(SiteMatters.Check::stopped).toList();
        List<StartMatter> state = new ArrayList<>(sight.all(house -> read(house).stream()));
        int wrong =
                (int) state.stream().filter(m -> !m.shape().equals("stands")).count();
        state.addAll(kept.stream().map(OwnerStart::kept).toList());
        filters.forEach(f -> state.add(filter(sight, f)));
        List<StartMatter> todo = new ArrayList<>(approvals.asked(sight));
        todo.addAll(site.looseEnds(sight, role()));
        List<Visit> visits = care.open(sight);
        return new StartPage(
                role().name(),
                Words.list(sight.houses().stream().map(HouseView::name).toList()) + " · "
                        + Words.day(sight.today(), sight.today()),
                finding(sight, wrong, filters, kept.size(), todo.size()),
                visits.isEmpty() ? "" : next(sight, visits.get(0)),
                sight.names(),
                List.of(
                        Section.of(
                                "Is the house all right?",
                                "",
                                state,
                                "We know of nothing wrong. No filter is followed yet."),
                        Section.of("Is there anything you should do?", "", todo, "No. Nothing waits for you."),
                        Section.of(
                                "Next visit",
                                "",
                                visits.stream()
                                        .limit(MOST_VISITS)
                                        .map(v -> visit(sight, v))
                                        .toList(),
                                "No visit is planned."),
                        Section.whole(
                                "How do I …", "", howTo(sight, filters), "The record has nothing to explain yet."),
                        Section.of("Is something not right?", "", report(sight), "No house is yours yet.")));
    }

    private static String finding(Sight sight, int wrong, List<FilterFollowUp> filters, int kept, int todo) {
        List<String> said = new ArrayList<>();
        if (wrong > 0) {
            said.add("something we read in the house is not as it should be");
        }
        if (filters.stream().anyMatch(FilterFollowUp::fillingEarly)) {
            said.add("the air filter is filling early");
        } else if (filters.stream().anyMatch(f -> f.dueOn().isBefore(sight.today()))) {
            said.add("the air filter is past its day");
        }
        if (kept > 0) {
            said.add(Words.count(kept, "piece of work stays", "pieces of work stay") + " open until it is right");
        }
        if (todo > 0) {
            said.add(Words.count(todo, "thing waits", "things wait") + " for your word");
        }
        boolean one = sight.houses().size() == 1;
        String house = one ? sight.houses().get(0).name() : "your houses";
        return said.isEmpty()
                ? "We know of nothing wrong in " + house + "."
                : Words.say(Words.list(said), todo == 0 ? "Otherwise we know of nothing wrong in " + house : "");
    }

    private static String purpose(Visit visit) {
        return switch (visit.kind()) {
            case FILTER -> "to change the filter";
            case REPORT -> "to look at what you reported";
            case DAYS_30, MONTHS_11, MONTHS_24 -> "for the visit " + visit.label();
        };
    }

    private static String next(Sight sight, Visit visit) {
        HouseView house = sight.house(visit.house());
        LocalDate planned = visit.plannedOn();
        return planned == null
                ? "Next we come " + purpose(visit) + ", before " + sight.day(house, visit.dueOn()) + "."
                : "We come on " + sight.day(house, planned) + " " + purpose(visit) + ".";
    }

    private static StartMatter kept(SiteMatters.Check one) {
        return new StartMatter(
                "hold",
                "Kept open",
                one.house().id(),
                one.check().title(),
                null,
                "Something was not right when we looked. It is not covered before it is.",
                List.of(),
                "");
    }

    /** What the readings of the last day say; nothing where nothing is read. */
    private Optional<StartMatter> read(HouseView house) {
        if (!access.may(Permission.VIEW_READINGS, house.id())) {
            return Optional.empty();
        }
        HouseToday today = todays.of(house.id());
        if (today.items().isEmpty()) {
            return Optional.empty();
        }
        boolean right = today.items().stream().allMatch(HouseToday.Item::right);
        return Optional.of(new StartMatter(
                right ? "stands" : "note",
                right ? "All right" : "We look into it",
                house.id(),
                "What we read in your house",
                "/houses/" + house.id() + "/owner",
                today.sentence(),
                List.of(),
                ""));
    }

    private static StartMatter filter(Sight sight, FilterFollowUp f) {
        boolean past = f.dueOn().isBefore(sight.today());
        // a load of 1 is new and 2 is to be changed
        long fullPercent = Math.round((f.load() - 1) * 100);
        return new StartMatter(
                past ? "over" : f.fillingEarly() ? "note" : "stands",
                past ? "To change" : f.fillingEarly() ? "Filling early" : "All right",
                f.house(),
                "Air filter",
                null,
                Words.say(
                        fullPercent <= 0
                                ? "It is new"
                                : "It has taken about " + fullPercent + " % of the dust it may take",
                        "We change it by " + Words.day(f.latestOn(), sight.today())),
                List.of(),
                f.fillingEarly() ? "Nothing is wrong with the air. " + why(f) : "");
    }

    /** What the record knows of the cause, without the numbers before it. */
    private static String why(FilterFollowUp f) {
        int cause = f.reason().indexOf("The record knows");
        return cause < 0
                ? ""
                : Words.sentence(f.reason().substring(cause).replace("The record knows: ", "Around that time: "));
    }

    private static StartMatter visit(Sight sight, Visit visit) {
        HouseView house = sight.house(visit.house());
        LocalDate planned = visit.plannedOn();
        return new StartMatter(
                planned == null ? "open" : "stands",
                planned == null ? "Before " + sight.day(house, visit.dueOn()) : sight.day(house, planned),
                house.id(),
                Words.sentence(visit.label()).replace(".", ""),
                null,
                planned == null ? "We write to you to find a day." : "",
                List.of(),
                "");
    }

    /** Only what the record of the house can answer. */
    private List<StartMatter> howTo(Sight sight, List<FilterFollowUp> filters) {
        List<StartMatter> how = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            Parts parts = record.parts(house.id());
            water(house, parts.water()).ifPresent(how::add);
            filters.stream()
                    .filter(f -> f.house().equals(house.id()))
                    .forEach(f -> how.add(tip(
                            house,
                            "look at the filter",
                            "It sits here: " + f.inHouse() + ". " + f.count() + " × " + f.size() + ", " + f.grade()
                                    + ". We bring the new one; you need not open anything.")));
            if (!parts.moisture().limits().isEmpty()) {
                how.add(tip(house, "set the humidity", humidity(sight.shown(), parts.moisture())));
            }
            if (!parts.air().makeUp().isEmpty()) {
                how.add(tip(
                        house,
                        "use the kitchen fan",
                        "A mild breeze from the make-up air while it runs is right. Keep the hood of that air outside free"
                                + " of snow and ice."));
            }
        }
        return how;
    }

    private static Optional<StartMatter> water(HouseView house, WaterPart water) {
        return water.leakPaths().stream()
                .filter(WaterPart.LeakPath::shutsOff)
                .findFirst()
                .map(
                        path -> tip(
                                house,
                                "know that water is safe",
                                "A leak at the " + lower(path.label()) + " runs into the " + path.caughtBy()
                                        + ", and the valve shuts"
                                        + " the water off by itself. It is a help, not a protection: a dry floor is worth a look."));
    }

    private static String humidity(Shown shown, MoisturePart moisture) {
        List<String> points = moisture.limits().stream()
                .sorted(java.util.Comparator.comparing(MoisturePart.HumidityLimit::outdoorC)
                        .reversed())
                .map(l -> shown.value(l.relativeHumidityFraction(), Unit.FRACTION) + " at "
                        + shown.value(l.outdoorC(), Unit.CELSIUS) + " outside")
                .toList();
        return "Never above " + Words.list(points) + ". More would wet the walls inside.";
    }

    private static StartMatter tip(HouseView house, String title, String sentence) {
        return new StartMatter("note", "How to", house.id(), title, null, sentence, List.of(), "");
    }

    private static List<StartMatter> report(Sight sight) {
        if (sight.houses().isEmpty()) {
            return List.of();
        }
        String house = sight.houses().get(0).id();
        return List.of(
                new StartMatter(
                        "stop",
                        "First",
                        null,
                        "Smell of gas or smoke, or an alarm for carbon monoxide",
                        null,
                        "Leave the house, switch nothing, and call for help from outside. Alarms are a help, not a"
                                + " protection.",
                        List.of(),
                        ""),
                new StartMatter(
                        "now",
                        "Now",
                        null,
                        "Water where it should not be",
                        null,
                        "Shut the water off, then call the office.",
                        List.of(),
                        ""),
                new StartMatter(
                        "note",
                        "Any time",
                        null,
                        "Anything else",
                        null,
                        "Send the office a photo and a word; say that it is about house " + house + ".",
                        List.of(),
                        ""));
    }

    private static String lower(String text) {
        return text.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
