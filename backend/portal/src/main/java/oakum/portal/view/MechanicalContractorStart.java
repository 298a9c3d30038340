package oakum.portal.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.physics.calculation.Unit;
import oakum.portal.decision.ChangeEntry;
import oakum.portal.decision.DecisionState;
import oakum.portal.decision.DecisionView;
import oakum.portal.decision.Decisions;
import oakum.portal.houserecord.AirPart;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Stage;
import oakum.portal.people.Role;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The mechanical contractor: the houses, the numbers as approved, what changed since, what to measure, what to mend. */
@Component
class MechanicalContractorStart implements Start {
    private static final int LATELY_DAYS = 30;
    private static final Set<String> HIS_PARTS = Set.of("air", "heat", "water");

    private final SiteMatters site;
    private final MeasuredMatters measured;
    private final ChangeMatters changes;
    private final ApprovalMatters approvals;
    private final Decisions decisions;
    private final HouseRecord record;

    MechanicalContractorStart(
            SiteMatters site,
            MeasuredMatters measured,
            ChangeMatters changes,
            ApprovalMatters approvals,
            Decisions decisions,
            HouseRecord record) {
        this.site = site;
        this.measured = measured;
        this.changes = changes;
        this.approvals = approvals;
        this.decisions = decisions;
        this.record = record;
    }

    @Override
    public Role role() {
        return Role.MECHANICAL_CONTRACTOR;
    }

    @Override
    public StartPage compose(Sight sight) {
        List<StartMatter> fixes = new ArrayList<>(site.looseEnds(sight, role()));
        List<StartMatter> asked = approvals.asked(sight);
        int ends = fixes.size();
        fixes.addAll(asked);
        List<StartMatter> changed = new ArrayList<>(approvals.lapsed(sight));
        int lapsed = changed.size();
        Map<String, Instant> quoted = approvals.lastApprovals(sight);
        changed.addAll(changes.since(
                sight,
                LATELY_DAYS,
                c -> c.kind() == ChangeEntry.Kind.PART
                        && HIS_PARTS.contains(c.key())
                        && c.when().isAfter(quoted.getOrDefault(c.houseId(), Instant.EPOCH))));
        List<StartMatter> tests = measured.toMeasure(sight);
        return new StartPage(
                role().name(),
                Words.day(sight.today(), sight.today()) + " · "
                        + Words.count(sight.houses().size(), "house", "houses"),
                finding(ends, asked.size(), lapsed, tests.size()),
                "",
                sight.names(),
                List.of(
                        Section.of("Your houses", "", houses(sight, fixes), "No house is yours yet."),
                        Section.whole(
                                "The numbers to build to",
                                "flow, size and power as the record has them",
                                numbers(sight),
                                "The record has no equipment yet."),
                        Section.of(
                                "What changed since you quoted",
                                "air, heat and water since your last approval, at most thirty days back",
                                changed,
                                "Nothing of air, heat or water was changed since."),
                        Section.of("Tests to do", "", tests, "Nothing is left to measure."),
                        Section.of("Questions and fixes on you", "first due first", fixes, "Nobody waits for you.")));
    }

    private static List<StartMatter> houses(Sight sight, List<StartMatter> fixes) {
        return sight.all(house -> {
            int open = (int)
                    fixes.stream().filter(f -> house.id().equals(f.houseId())).count();
            return java.util.stream.Stream.of(new StartMatter(
                    open == 0 ? "stands" : "open",
                    open == 0 ? "Nothing open" : open == 1 ? "1 thing on you" : open + " things on you",
                    house.id(),
                    house.name(),
                    "/houses/" + house.id(),
                    Words.sentence(house.place() + ", " + house.stage().label()),
                    List.of(),
                    ""));
        });
    }

    private List<StartMatter> numbers(Sight sight) {
        List<StartMatter> numbers = new ArrayList<>();
        Shown shown = sight.shown();
        for (HouseView house : sight.between(Stage.CONCEPT, Stage.HANDOVER).houses()) {
            AirPart air = record.parts(house.id()).air();
            List<DecisionView> settled = decisions.list(house.id());
            for (AirPart.Exhaust e : air.exhaust()) {
                numbers.add(number(
                        house, settled, "air.exhaust[" + e.id() + "]", e.label(), flow(shown, e.ratedFlowM3PerS())));
            }
            for (AirPart.MakeUp m : air.makeUp()) {
                Double duct = m.ductDiameterM();
                Double heater = m.heaterRatedW();
                Double circuit = m.circuitRatedA();
                numbers.add(number(
                        house,
                        settled,
                        "air.makeUp[" + m.id() + "]",
                        m.label(),
                        flow(shown, m.flowM3PerS())
                                + (duct == null ? "" : ", duct " + shown.value(duct, Unit.SMALL_METRE))
                                + (heater == null ? "" : ", heater " + shown.value(heater, Unit.ELECTRIC_WATT))
                                + (circuit == null ? "" : ", circuit " + shown.value(circuit, Unit.AMPERE))));
            }
            AirPart.AirHandler handler = air.airHandler();
            if (handler != null) {
                Double low = handler.lowFlowM3PerS();
                Double limit = handler.staticLimitPa();
                numbers.add(number(
                        house,
                        settled,
                        "air.airHandler",
                        "Air handler",
                        flow(shown, handler.highFlowM3PerS()) + " high"
                                + (low == null ? "" : ", " + flow(shown, low) + " all the time")
                                + (limit == null
                                        ? ""
                                        : ", external static at most " + shown.value(limit, Unit.PASCAL))));
            }
            for (AirPart.Filter f : air.filters()) {
                numbers.add(number(
                        house,
                        settled,
                        "air.filters[" + f.id() + "]",
                        f.label(),
                        f.count() + " × "
                                + shown.number(f.widthM(), Unit.SMALL_METRE) + " × "
                                + shown.number(f.heightM(), Unit.SMALL_METRE) + " × "
                                + shown.value(f.depthM(), Unit.SMALL_METRE) + ", " + f.grade()));
            }
            AirPart.Ventilation fresh = air.ventilation();
            if (fresh != null) {
                numbers.add(number(
                        house,
                        settled,
                        "air.ventilation",
                        "Energy-recovery ventilator (ERV)",
                        flow(shown, fresh.supplyM3PerS()) + " in, " + flow(shown, fresh.exhaustM3PerS()) + " out"));
            }
        }
        return numbers;
    }

    private static String flow(Shown shown, double flowM3PerS) {
        return shown.value(flowM3PerS, Unit.CUBIC_METRE_PER_SECOND);
    }

    /** A number is as good as the approval of the decision that settles it. */
    private static StartMatter number(
            HouseView house, List<DecisionView> settled, String path, String title, String sentence) {
        DecisionView decision = settled.stream()
                .filter(d -> d.governs().stream().anyMatch(g -> g.startsWith(path)))
                .findFirst()
                .orElse(null);
        boolean stands = decision != null && decision.state() == DecisionState.APPROVED;
        return new StartMatter(
                decision == null ? "note" : stands ? "stands" : "hold",
                decision == null ? "In the record" : stands ? "Approved" : "Do not build yet",
                house.id(),
                title,
                decision == null
                        ? "/houses/" + house.id() + "/record/air"
                        : "/houses/" + house.id() + "/decisions/" + decision.code(),
                Words.sentence(sentence),
                List.of(),
                decision == null || stands ? "" : decision.title() + ": " + ApprovalMatters.missing(decision));
    }

    private static String finding(int ends, int asked, int lapsed, int tests) {
        List<String> said = new ArrayList<>();
        if (lapsed > 0) {
            said.add(
                    Words.count(lapsed, "approval has", "approvals have") + " lapsed: do not build to the old numbers");
        }
        if (ends > 0) {
            said.add(Words.count(ends, "fix is", "fixes are") + " on you");
        }
        if (asked > 0) {
            said.add(Words.count(asked, "decision waits", "decisions wait") + " for your approval");
        }
        if (said.size() < 2 && tests > 0) {
            said.add(Words.count(tests, "test is", "tests are") + " still to do");
        }
        return said.isEmpty() ? "Nothing waits for you." : Words.sentence(Words.list(said));
    }
}
