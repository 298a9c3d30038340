package oakum.portal.view;

import java.util.ArrayList;
import java.util.List;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.PartKind;
import oakum.portal.houserecord.Parts;
import oakum.portal.houserecord.Stage;
import oakum.portal.people.Access;
import oakum.portal.people.Role;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The designer: what changed, what is open, what the record lacks, what others said, which orders wait. */
@Component
class DesignerStart implements Start {
    private static final int LATELY_DAYS = 7;

    private final ChangeMatters changes;
    private final ApprovalMatters approvals;
    private final SiteMatters site;
    private final HouseRecord record;
    private final Access access;

    DesignerStart(
            ChangeMatters changes, ApprovalMatters approvals, SiteMatters site, HouseRecord record, Access access) {
        this.changes = changes;
        this.approvals = approvals;
        this.site = site;
        this.record = record;
        this.access = access;
    }

    @Override
    public Role role() {
        return Role.DESIGNER;
    }

    @Override
    public StartPage compose(Sight sight) {
        List<StartMatter> lapsed = approvals.lapsed(sight);
        List<StartMatter> changed = new ArrayList<>(lapsed);
        changed.addAll(changes.since(sight, LATELY_DAYS, change -> true));
        List<StartMatter> open = approvals.unsettled(sight);
        List<StartMatter> gaps = gaps(sight);
        List<StartMatter> answers = new ArrayList<>(site.looseEnds(sight, Role.DESIGNER));
        int questions = answers.size();
        answers.addAll(approvals.remarks(sight, LATELY_DAYS, access.caller().displayName()));
        List<StartMatter> orders = approvals.orders(sight);
        return new StartPage(
                role().name(),
                Words.day(sight.today(), sight.today()) + " · "
                        + Words.count(sight.houses().size(), "house", "houses"),
                finding(lapsed.size(), open.size(), orders.size(), questions),
                "",
                sight.names(),
                List.of(
                        Section.of(
                                "What changed",
                                "in the last seven days, and what it touches",
                                changed,
                                "Nothing was changed in the last seven days."),
                        Section.of("Open decisions", "with what each still lacks", open, "Every decision is approved."),
                        Section.of(
                                "Gaps in the record",
                                "parts of houses in design that nobody has written",
                                gaps,
                                "Every part of every house in design is written."),
                        Section.of(
                                "Answers from site and others",
                                "loose ends that name you come first",
                                answers,
                                "Nobody has written in the last seven days."),
                        Section.of(
                                "Orders that wait for a decision",
                                "",
                                orders,
                                "No order waits for a decision of yours.")));
    }

    private List<StartMatter> gaps(Sight sight) {
        List<StartMatter> gaps = new ArrayList<>();
        for (HouseView house : sight.between(Stage.FIRST_TALK, Stage.READY).houses()) {
            Parts parts = record.parts(house.id());
            for (PartKind kind : PartKind.values()) {
                if (parts.revision(kind) == 0) {
                    gaps.add(new StartMatter(
                            "open",
                            "Not written",
                            house.id(),
                            kind.title(),
                            "/houses/" + house.id() + "/record/" + kind.key(),
                            "No proof can draw on this part yet.",
                            List.of(),
                            ""));
                }
            }
        }
        return gaps;
    }

    private static String finding(int lapsed, int open, int orders, int questions) {
        List<String> said = new ArrayList<>();
        if (lapsed > 0) {
            said.add(Words.count(lapsed, "approval has", "approvals have") + " lapsed");
        }
        if (questions > 0) {
            said.add(Words.count(questions, "question is", "questions are") + " waiting for you");
        }
        if (open > 0) {
            said.add(Words.count(open, "decision is", "decisions are") + " still open");
        }
        if (said.size() < 2 && orders > 0) {
            said.add(Words.count(orders, "order waits", "orders wait") + " for a decision");
        }
        return said.isEmpty() ? "Every decision stands, and nothing waits for you." : Words.sentence(Words.list(said));
    }
}
