package oakum.portal.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import oakum.portal.aftercare.FilterFollowUp;
import oakum.portal.aftercare.Rounds;
import oakum.portal.aftercare.Stock;
import oakum.portal.aftercare.VisitKind;
import oakum.portal.people.Access;
import oakum.portal.people.Accounts;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The office manager: rounds, stock, owners who wait, days of the warranty, what names the office. */
@Component
class OfficeManagerStart implements Start {
    private static final int AHEAD_DAYS = 60;

    private final Rounds rounds;
    private final Stock stock;
    private final CareMatters care;
    private final ApprovalMatters approvals;
    private final SiteMatters site;
    private final Accounts accounts;
    private final Access access;

    OfficeManagerStart(
            Rounds rounds,
            Stock stock,
            CareMatters care,
            ApprovalMatters approvals,
            SiteMatters site,
            Accounts accounts,
            Access access) {
        this.rounds = rounds;
        this.stock = stock;
        this.care = care;
        this.approvals = approvals;
        this.site = site;
        this.accounts = accounts;
        this.access = access;
    }

    @Override
    public Role role() {
        return Role.OFFICE_MANAGER;
    }

    @Override
    public StartPage compose(Sight sight) {
        boolean firm = plansForTheFirm(sight);
        Rounds.RoundList list =
                firm ? rounds.list() : new Rounds.RoundList(sight.today(), List.of(), List.of(), List.of(), List.of());
        Stock.StockList shelf = firm ? stock.list() : new Stock.StockList(sight.today(), List.of(), List.of());
        List<StartMatter> toBook = list.proposed().stream()
                .sorted(Comparator.comparing(Rounds.ProposedRound::day))
                .map(round -> round(round, list.today()))
                .toList();
        List<StartMatter> owners = new ArrayList<>(care.reports(sight));
        owners.addAll(approvals.unanswered(sight, Role.OWNER, accounts::holders));
        List<StartMatter> ours = new ArrayList<>(site.looseEnds(sight, role()));
        ours.addAll(approvals.orders(sight));
        List<StartMatter> early = care.alerts(sight);
        ours.addAll(early);
        return new StartPage(
                role().name(),
                Words.day(list.today(), list.today()) + " · "
                        + Words.count(
                                (int) care.filters(sight).stream()
                                        .map(FilterFollowUp::house)
                                        .distinct()
                                        .count(),
                                "house",
                                "houses")
                        + " in care",
                finding(list, toBook.size(), owners.size()),
                "",
                sight.names(),
                List.of(
                        Section.whole(
                                "Rounds to book", "the first day first", toBook, "Every filter due is on a round."),
                        Section.of(
                                "Stock",
                                "short for the rounds until " + Words.day(shelf.until(), list.today()),
                                shelf.items().stream()
                                        .filter(line -> line.order() > 0)
                                        .map(OfficeManagerStart::line)
                                        .toList(),
                                "The shelf holds enough, with one spare of each size."),
                        Section.of("Owners waiting for an answer", "", owners, "No owner's word stands unanswered."),
                        Section.of(
                                "Warranty visits",
                                "in the next sixty days",
                                warranty(sight),
                                "No visit after handover falls in the next sixty days."),
                        Section.of(
                                "Alerts and loose ends for the office",
                                "",
                                ours,
                                "No alert, no held order and no loose end for the office.")));
    }

    /** Rounds and the shelf are over all houses; whoever holds the role for some houses only does not plan them. */
    private boolean plansForTheFirm(Sight sight) {
        return access.firmRoles().contains(role())
                && sight.houses().stream().allMatch(house -> access.may(Permission.PLAN_AFTERCARE, house.id()));
    }

    private static StartMatter round(Rounds.ProposedRound round, LocalDate today) {
        LocalDate first = round.filters().stream()
                .map(FilterFollowUp::latestOn)
                .min(Comparator.naturalOrder())
                .orElse(round.day());
        boolean late = first.isBefore(today);
        List<String> taken = round.filters().stream()
                .map(f -> f.house() + ", " + f.count() + " × " + f.size())
                .toList();
        List<String> also = new ArrayList<>(round.also().stream()
                .map(a -> a.house() + ": " + a.what() + ", due " + Words.day(a.dueOn(), today))
                .toList());
        also.addAll(round.reasons());
        also.addAll(round.remarks());
        return new StartMatter(
                late ? "over" : "open",
                Words.when(round.day(), today),
                null,
                round.place().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                        + round.place().substring(1),
                "/rounds",
                Words.sentence(String.join("; ", taken)),
                late ? List.of("overdue") : List.of(),
                Words.say(
                        round.filters().isEmpty() ? "" : "The first must be seen by " + Words.day(first, today),
                        String.join(". ", also)));
    }

    private static StartMatter line(Stock.StockLine line) {
        String shelf = line.shelfPlace();
        return new StartMatter(
                "now",
                "Order " + line.order(),
                null,
                line.size() + ", " + line.grade(),
                "/rounds",
                "The rounds need " + line.need() + " and " + line.spare() + " spare; "
                        + (line.onShelf() == 0 ? "none is" : line.onShelf() == 1 ? "one is" : line.onShelf() + " are")
                        + " on the shelf.",
                List.of(),
                shelf == null ? "" : "Shelf " + shelf + ".");
    }

    private List<StartMatter> warranty(Sight sight) {
        LocalDate until = sight.today().plusDays(AHEAD_DAYS);
        return care.open(sight).stream()
                .filter(v -> v.kind() != VisitKind.FILTER
                        && v.kind() != VisitKind.REPORT
                        && !CareMatters.day(v).isAfter(until))
                .map(v -> {
                    boolean late = v.dueOn().isBefore(sight.today());
                    LocalDate planned = v.plannedOn();
                    return new StartMatter(
                            late ? "over" : planned == null ? "open" : "stands",
                            late ? "Overdue" : planned == null ? "To plan" : "Planned",
                            v.house(),
                            sight.house(v.house()).name() + ", " + v.label(),
                            "/rounds",
                            "Due before " + Words.day(v.dueOn(), sight.today())
                                    + (planned == null
                                            ? "."
                                            : ", planned for " + Words.day(planned, sight.today()) + "."),
                            List.of(),
                            "");
                })
                .toList();
    }

    private static String finding(Rounds.RoundList list, int toBook, int owners) {
        List<String> said = new ArrayList<>();
        if (toBook > 0) {
            int houses = (int) list.proposed().stream()
                    .flatMap(r -> r.filters().stream())
                    .map(FilterFollowUp::house)
                    .distinct()
                    .count();
            LocalDate first = list.proposed().stream()
                    .map(Rounds.ProposedRound::day)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            said.add(Words.count(toBook, "round serves the", "rounds serve the") + " "
                    + Words.count(houses, "house", "houses") + " whose filters are due; the first leaves "
                    + Words.when(first, list.today()));
        }
        if (owners > 0) {
            said.add(Words.count(owners, "owner's word waits", "owners' words wait") + " for an answer");
        }
        return said.isEmpty()
                ? "Every filter is on a round, and no owner waits."
                : Words.say(said.toArray(String[]::new));
    }
}
