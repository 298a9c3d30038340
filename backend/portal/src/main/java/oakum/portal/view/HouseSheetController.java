package oakum.portal.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.people.Role;
import oakum.portal.view.HouseSheet.SectionMark;
import oakum.portal.view.StartPage.StartMatter;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** How one house stands, for its page. */
@RestController
@RequestMapping("/api/v1/houses/{house}/views")
class HouseSheetController {
    private static final String WALL = "wall";
    private static final String AIR_HANDLER = "airHandler";

    private final Sights sights;
    private final SiteMatters site;
    private final MeasuredMatters measured;
    private final CareMatters care;
    private final ApprovalMatters approvals;
    private final HouseRecord record;

    HouseSheetController(
            Sights sights,
            SiteMatters site,
            MeasuredMatters measured,
            CareMatters care,
            ApprovalMatters approvals,
            HouseRecord record) {
        this.sights = sights;
        this.site = site;
        this.measured = measured;
        this.care = care;
        this.approvals = approvals;
        this.record = record;
    }

    /**
     * The finding of a house and the marks on its section.
     *
     * @param role for somebody who holds several; the first one held where left out
     */
    @GetMapping("/house")
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    HouseSheet house(@PathVariable String house, @RequestParam(required = false) @Nullable Role role) {
        Sight sight = sights.of(house, role);
        boolean owner = sight.role() == Role.OWNER;
        List<SiteMatters.Check> stopped =
                site.unsigned(sight).stream().filter(SiteMatters.Check::stopped).toList();
        List<StartMatter> clocks = owner ? List.of() : site.clocks(sight);
        List<StartMatter> misfits = owner ? List.of() : measured.misfits(sight);
        List<StartMatter> filters = care.alerts(sight);
        List<SectionMark> marks = new ArrayList<>();
        stopped.forEach(check -> marks.add(mark(place(check), site.matter(check), owner)));
        misfits.forEach(misfit -> marks.add(mark(place(house, misfit), misfit, false)));
        filters.forEach(filter -> marks.add(mark(AIR_HANDLER, filter, owner)));
        clocks.stream().limit(1).forEach(clock -> marks.add(mark(WALL, clock, false)));
        return new HouseSheet(house, sight.role().name(), finding(sight, stopped, clocks, misfits, filters), marks);
    }

    private static SectionMark mark(String on, StartMatter matter, boolean plain) {
        return new SectionMark(
                on, matter.title(), matter.sentence(), matter.shape(), matter.word(), plain ? null : matter.href());
    }

    /** Mechanical rough-in is looked at around the air handler, every other cover check at the envelope. */
    private static String place(SiteMatters.Check check) {
        return check.check().code().equals("C10") ? AIR_HANDLER : WALL;
    }

    private String place(String house, StartMatter misfit) {
        String href = misfit.href();
        if (href == null || href.endsWith("/tightness")) {
            return WALL;
        }
        return href.endsWith("/filter-drop")
                ? AIR_HANDLER
                : record.parts(house).air().makeUp().stream()
                        .findFirst()
                        .map(unit -> unit.id())
                        .orElse(WALL);
    }

    private String finding(
            Sight sight,
            List<SiteMatters.Check> stopped,
            List<StartMatter> clocks,
            List<StartMatter> misfits,
            List<StartMatter> filters) {
        List<String> said = new ArrayList<>();
        int lapsed = approvals.lapsed(sight).size();
        if (lapsed > 0) {
            said.add(Words.count(lapsed, "approval has", "approvals have") + " lapsed");
        }
        if (!stopped.isEmpty()) {
            said.add(Words.list(
                            stopped.stream().map(c -> lower(c.check().title())).toList())
                    + " must not be covered");
        }
        if (!misfits.isEmpty()) {
            said.add(Words.list(misfits.stream().map(m -> lower(m.title())).toList())
                    + (misfits.size() == 1 ? " does" : " do") + " not fit the design");
        }
        filters.stream().limit(1).forEach(f -> said.add("the " + lower(f.title())));
        clocks.stream()
                .filter(c -> !c.shape().equals("under"))
                .limit(1)
                .forEach(c -> said.add(lower(c.title()) + " has " + c.word()));
        int open = approvals.unsettled(sight).size();
        if (said.size() < 2 && open > 0) {
            said.add(Words.count(open, "decision is", "decisions are") + " still open");
        }
        return said.isEmpty()
                ? "Nothing is open in " + sight.houses().get(0).name() + "."
                : Words.sentence(Words.list(said));
    }

    private static String lower(String text) {
        return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
