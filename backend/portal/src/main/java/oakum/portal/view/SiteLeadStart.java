package oakum.portal.view;

import java.util.List;
import oakum.portal.houserecord.Stage;
import oakum.portal.people.Role;
import oakum.portal.site.CoverCheckState;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The site lead: what must stay open, what to look at, which days run out, what is delivered, what to mend. */
@Component
class SiteLeadStart implements Start {
    private final SiteMatters site;
    private final ApprovalMatters approvals;

    SiteLeadStart(SiteMatters site, ApprovalMatters approvals) {
        this.site = site;
        this.approvals = approvals;
    }

    @Override
    public Role role() {
        return Role.SITE_LEAD;
    }

    @Override
    public StartPage compose(Sight sight) {
        Sight building = sight.between(Stage.READY, Stage.HANDOVER);
        List<SiteMatters.Check> checks = site.unsigned(sight);
        List<SiteMatters.Check> stopped =
                checks.stream().filter(SiteMatters.Check::stopped).toList();
        List<StartMatter> open = checks.stream()
                .filter(c -> !c.stopped())
                .filter(c ->
                        c.check().state() == CoverCheckState.OPEN || c.check().waitsFor() == role())
                .map(site::matter)
                .toList();
        List<StartMatter> clocks = site.clocks(sight);
        return new StartPage(
                role().name(),
                Words.day(sight.today(), sight.today()) + " · "
                        + (building.houses().isEmpty()
                                ? "no house is being built"
                                : Words.list(building.houses().stream()
                                        .map(h -> h.name() + ", " + h.stage().label())
                                        .toList())),
                finding(stopped, open, clocks),
                "",
                sight.names(),
                List.of(
                        Section.of(
                                "Do not cover",
                                "",
                                stopped.stream().map(site::matter).toList(),
                                "Nothing must be kept open."),
                        Section.of(
                                "Cover checks to look at",
                                "each before it is covered",
                                open,
                                "Every cover check that was opened is looked at."),
                        Section.of("Running clocks", "the least to spare first", clocks, "No clock is running."),
                        Section.of(
                                "Deliveries to look at",
                                "against what was approved",
                                approvals.deliveries(building),
                                "Nothing is ordered for the houses being built."),
                        Section.of(
                                "Loose ends on you",
                                "first due first",
                                site.looseEnds(sight, role()),
                                "No loose end names you.")));
    }

    private static String finding(List<SiteMatters.Check> stopped, List<StartMatter> open, List<StartMatter> clocks) {
        String clock = clocks.stream()
                .findFirst()
                .filter(c -> !c.shape().equals("under"))
                .map(c -> c.title() + ": " + c.word())
                .orElse("");
        if (!stopped.isEmpty()) {
            return Words.say(SiteMatters.mustNotBeCovered(stopped), clock);
        }
        if (!open.isEmpty()) {
            return Words.say(Words.count(open.size(), "cover check", "cover checks") + " to look at", clock);
        }
        return clock.isEmpty() ? "Nothing stands in the way on site." : Words.sentence(clock);
    }
}
