package oakum.portal.view;

import java.util.ArrayList;
import java.util.List;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Stage;
import oakum.portal.people.Role;
import oakum.portal.site.CoverCheckState;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The principal: what lapsed, what waits for the principal's name, what does not fit. */
@Component
class PrincipalStart implements Start {
    private final ApprovalMatters approvals;
    private final SiteMatters site;
    private final MeasuredMatters measured;
    private final CareMatters care;

    PrincipalStart(ApprovalMatters approvals, SiteMatters site, MeasuredMatters measured, CareMatters care) {
        this.approvals = approvals;
        this.site = site;
        this.measured = measured;
        this.care = care;
    }

    @Override
    public Role role() {
        return Role.PRINCIPAL;
    }

    @Override
    public StartPage compose(Sight sight) {
        List<StartMatter> lapsed = approvals.lapsed(sight);
        List<SiteMatters.Check> checks = site.unsigned(sight).stream()
                .filter(c -> c.stopped() || (c.check().waitsFor() == Role.PRINCIPAL && toSign(c)))
                .toList();
        List<StartMatter> misfits = measured.misfits(sight);
        List<StartMatter> alerts = care.alerts(sight);
        List<StartMatter> past = new ArrayList<>(misfits);
        past.addAll(alerts);
        List<StartMatter> asked = approvals.asked(sight);
        List<StartMatter> questions = site.looseEnds(sight, Role.PRINCIPAL);
        return new StartPage(
                role().name(),
                over(sight),
                finding(lapsed, checks, misfits.size(), alerts.size(), asked),
                "",
                sight.names(),
                List.of(
                        Section.of(
                                "Lapsed approvals",
                                "worst first, with what is bought or built",
                                lapsed,
                                "Every approval stands, or is carried over."),
                        Section.of(
                                "Cover checks for your name",
                                "what must not be covered comes first",
                                checks.stream().map(site::matter).toList(),
                                "No cover check waits for you."),
                        Section.of(
                                "Measurements past a limit, and alerts",
                                "",
                                past,
                                "Every measurement passes, and no filter fills early."),
                        Section.of(
                                "Proofs asked of you", "first due first", asked, "No proof waits for your approval."),
                        Section.of(
                                "Questions for you",
                                "loose ends that name the principal",
                                questions,
                                "Nobody waits for an answer of yours.")));
    }

    private static boolean toSign(SiteMatters.Check check) {
        return check.check().state() == CoverCheckState.TO_SIGN;
    }

    /** "14 houses, 12 in care". */
    private static String over(Sight sight) {
        long occupied = sight.houses().stream()
                .map(HouseView::stage)
                .filter(stage -> stage.compareTo(Stage.FIRST_YEAR) >= 0)
                .count();
        return Words.day(sight.today(), sight.today()) + " · "
                + Words.count(sight.houses().size(), "house", "houses") + ", " + occupied + " lived in";
    }

    private static String finding(
            List<StartMatter> lapsed,
            List<SiteMatters.Check> checks,
            int misfits,
            int alerts,
            List<StartMatter> asked) {
        List<String> said = new ArrayList<>();
        if (!lapsed.isEmpty()) {
            long behind = lapsed.stream()
                    .filter(m -> m.tags().stream().anyMatch(t -> t.contains("order") || t.startsWith("already")))
                    .count();
            said.add(Words.count(lapsed.size(), "approval has", "approvals have") + " lapsed"
                    + (behind == 0
                            ? ""
                            : lapsed.size() == 1
                                    ? " with an order behind it"
                                    : ", " + behind + " with an order behind"));
        }
        List<SiteMatters.Check> kept =
                checks.stream().filter(SiteMatters.Check::stopped).toList();
        int stopped = kept.size();
        if (stopped > 0) {
            List<String> where =
                    kept.stream().map(c -> c.house().name()).distinct().toList();
            said.add(Words.count(stopped, "piece of work", "pieces of work")
                    + (where.size() > 2 ? "" : " in " + Words.list(where)) + " must not be covered");
        }
        int toSign = checks.size() - stopped;
        if (toSign > 0) {
            said.add(Words.count(toSign, "cover check waits", "cover checks wait") + " for your name");
        }
        if (said.size() < 2 && misfits > 0) {
            said.add(Words.count(misfits, "measurement does", "measurements do") + " not fit the design");
        }
        if (said.size() < 2 && alerts > 0) {
            said.add(Words.count(alerts, "filter is", "filters are") + " filling too fast");
        }
        if (said.size() < 2 && !asked.isEmpty()) {
            said.add(Words.count(asked.size(), "decision waits", "decisions wait") + " for your approval");
        }
        return said.isEmpty() ? "Nothing waits for you." : Words.sentence(Words.list(said));
    }
}
