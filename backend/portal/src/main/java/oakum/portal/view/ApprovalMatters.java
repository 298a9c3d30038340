package oakum.portal.view;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oakum.physics.calculation.Verdict;
import oakum.portal.decision.ApprovalState;
import oakum.portal.decision.DecisionState;
import oakum.portal.decision.DecisionView;
import oakum.portal.decision.Decisions;
import oakum.portal.decision.OrderLine;
import oakum.portal.decision.Reach;
import oakum.portal.decision.Trials;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.ValueDifference;
import oakum.portal.people.Role;
import oakum.portal.view.StartPage.StartMatter;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What approvals ask of people: those that lapsed, those still to be given, decisions still open. */
@Component
class ApprovalMatters {
    private final Decisions decisions;
    private final Trials trials;

    ApprovalMatters(Decisions decisions, Trials trials) {
        this.decisions = decisions;
        this.trials = trials;
    }

    /** Decisions that the change of a value asks now because an approval lapsed; the worst first. */
    List<StartMatter> lapsed(Sight sight) {
        List<Lapsed> lapsed = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            Reach reach = trials.reach(house.id());
            reach.askedNow().stream()
                    .filter(asked -> asked.state() == Reach.Fate.LAPSED)
                    .forEach(asked -> lapsed.add(new Lapsed(house, reach, asked)));
        }
        return lapsed.stream()
                .sorted(Comparator.comparing(Lapsed::weight).reversed())
                .map(one -> matter(sight, one))
                .toList();
    }

    private record Lapsed(HouseView house, Reach reach, Reach.ReachedDecision asked) {
        List<Reach.ReachedOrder> orders() {
            return reach.orders().stream()
                    .filter(order -> order.decision().equals(asked.code()))
                    .toList();
        }

        int weight() {
            return (asked.alreadyBuilt() ? 8 : 0)
                    + (asked.alreadyBought() ? 4 : 0)
                    + (asked.safetyList() ? 2 : 0)
                    + (orders().isEmpty() ? 0 : 1);
        }
    }

    private static StartMatter matter(Sight sight, Lapsed one) {
        Reach.ReachedDecision asked = one.asked();
        List<String> tags = new ArrayList<>();
        if (asked.safetyList()) {
            tags.add("safety list");
        }
        for (Reach.ReachedOrder order : one.orders()) {
            tags.add(
                    switch (order.state()) {
                        case ORDERED -> "ordered";
                        case HELD -> "order on hold";
                        case BOUGHT -> "already bought";
                        case BUILT -> "already built";
                    });
        }
        String bought = one.orders().isEmpty() && !asked.alreadyBought() && !asked.alreadyBuilt()
                ? "Nothing bought, nothing built"
                : Words.list(one.orders().stream()
                        .map(o -> o.title() + (o.note().isBlank() ? "" : ", " + o.note()))
                        .toList());
        List<String> whom =
                new ArrayList<>(asked.asked().stream().map(Role::label).toList());
        whom.addAll(asked.outside());
        LocalDate due = asked.dueOn();
        return new StartMatter(
                "lapsed",
                "Lapsed",
                one.house().id(),
                asked.title(),
                "/houses/" + one.house().id() + "/decisions/" + asked.code(),
                Words.say(why(sight.shown(), one), numbers(sight.shown(), one)),
                tags.stream().distinct().toList(),
                Words.say(
                        bought,
                        whom.isEmpty() ? "" : "Asked now: " + Words.list(whom),
                        due == null ? "" : "Due " + sight.day(one.house(), due)));
    }

    /** Which value moved: of those behind this decision's proofs, else of those that moved at all. */
    private static String why(Shown shown, Lapsed one) {
        Set<String> behind = links(one)
                .flatMap(link -> link.inputs().stream())
                .map(ValueDifference::path)
                .collect(Collectors.toSet());
        List<Reach.ChangedValue> changed = one.reach().changedValues();
        Reach.ChangedValue value = changed.stream()
                .filter(v -> behind.contains(v.path()))
                .findFirst()
                .orElse(null);
        if (value == null) {
            return one.asked().because().isEmpty() ? "" : one.asked().because().get(0);
        }
        return value.label() + " " + shown.became(value.old(), value.present(), value.unit());
    }

    /** What came out of it: first what broke a limit, else the leading number. */
    private static String numbers(Shown shown, Lapsed one) {
        List<Reach.ChainOutput> moved = links(one)
                .flatMap(link -> link.outputs().stream())
                .filter(output -> output.unit() != null && !Objects.equals(output.old(), output.present()))
                .toList();
        return moved.stream()
                .filter(output -> output.verdict() == Verdict.FAILS)
                .findFirst()
                .or(() -> moved.stream().filter(Reach.ChainOutput::leading).findFirst())
                .map(output -> output.label() + " "
                        + shown.became(output.old(), output.present(), output.unit())
                        + (output.limit() == null ? "" : ", limit " + shown.text(output.limit(), output.unit())))
                .orElse("");
    }

    private static Stream<Reach.ChainLink> links(Lapsed one) {
        return one.reach().chain().stream()
                .filter(link -> link.decisions().contains(one.asked().code()));
    }

    /** Decisions that wait for the approval of this role, the first due first; lapsed ones stand elsewhere. */
    List<StartMatter> asked(Sight sight) {
        record Asked(HouseView house, DecisionView decision, boolean look) {}
        return sight
                .all(house -> decisions.list(house.id()).stream()
                        .filter(d -> d.state() != DecisionState.LAPSED && isChosen(d))
                        .filter(d -> d.approvers().contains(sight.role()) && !given(d, sight.role()))
                        .map(d -> new Asked(house, d, d.state() == DecisionState.FRESH_LOOK)))
                .stream()
                .sorted(Comparator.comparing(
                        a -> a.decision().dueOn(), Comparator.nullsLast(Comparator.naturalOrder())))
                .map(a -> new StartMatter(
                        a.look() ? "look" : "open",
                        due(sight, a.house(), a.decision(), a.look() ? "Fresh look" : "Asked"),
                        a.house().id(),
                        a.decision().title(),
                        href(a.house(), a.decision()),
                        a.decision().actions().contains("approve")
                                ? chosen(a.decision())
                                : "A proof behind it is not current; the designer recomputes it first.",
                        a.decision().safetyList() ? List.of("safety list") : List.of(),
                        ""))
                .toList();
    }

    /** Decisions that nobody has settled yet, with what is missing. */
    List<StartMatter> unsettled(Sight sight) {
        record Open(HouseView house, DecisionView decision) {}
        return sight
                .all(house -> decisions.list(house.id()).stream()
                        .filter(d -> d.state() == DecisionState.OPEN || d.state() == DecisionState.PARTLY_APPROVED)
                        .map(d -> new Open(house, d)))
                .stream()
                .sorted(Comparator.comparing(
                        a -> a.decision().dueOn(), Comparator.nullsLast(Comparator.naturalOrder())))
                .map(a -> new StartMatter(
                        "open",
                        due(sight, a.house(), a.decision(), "Open"),
                        a.house().id(),
                        a.decision().title(),
                        href(a.house(), a.decision()),
                        missing(a.decision()),
                        a.decision().safetyList() ? List.of("safety list") : List.of(),
                        ""))
                .toList();
    }

    /** Orders whose decision does not stand as approved, or which somebody holds. */
    List<StartMatter> orders(Sight sight) {
        List<StartMatter> matters = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            for (DecisionView decision : decisions.list(house.id())) {
                for (OrderLine order : decision.orders()) {
                    boolean held = order.state() == OrderLine.State.HELD;
                    boolean unapproved =
                            decision.state() != DecisionState.APPROVED && order.state() == OrderLine.State.ORDERED;
                    if (held || unapproved) {
                        matters.add(new StartMatter(
                                held ? "hold" : "wait",
                                held ? "On hold" : "Not approved",
                                house.id(),
                                order.title(),
                                href(house, decision),
                                Words.sentence(order.note()),
                                List.of(),
                                decision.title() + ": "
                                        + (decision.state() == DecisionState.APPROVED
                                                ? "approved; somebody holds the order."
                                                : missing(decision))));
                    }
                }
            }
        }
        return matters;
    }

    /** What was bought and not yet built, with what was approved, so that a delivery can be held against it. */
    List<StartMatter> deliveries(Sight sight) {
        List<StartMatter> matters = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            for (DecisionView decision : decisions.list(house.id())) {
                for (OrderLine order : decision.orders()) {
                    if (order.state() == OrderLine.State.BUILT || order.state() == OrderLine.State.HELD) {
                        continue;
                    }
                    boolean stands = decision.state() == DecisionState.APPROVED;
                    matters.add(new StartMatter(
                            stands ? "stands" : "hold",
                            stands ? "Approved" : "Do not install",
                            house.id(),
                            order.title(),
                            href(house, decision),
                            stands ? chosen(decision) : missing(decision),
                            List.of(order.state() == OrderLine.State.BOUGHT ? "bought" : "ordered"),
                            order.note()));
                }
            }
        }
        return matters;
    }

    /** When the role last approved something, house by house. */
    Map<String, Instant> lastApprovals(Sight sight) {
        Map<String, Instant> last = new HashMap<>();
        for (HouseView house : sight.houses()) {
            decisions.list(house.id()).stream()
                    .flatMap(d -> d.approvals().stream())
                    .filter(a -> a.role() == sight.role())
                    .map(DecisionView.ApprovalView::at)
                    .max(Comparator.naturalOrder())
                    .ifPresent(at -> last.put(house.id(), at));
        }
        return last;
    }

    private static String due(Sight sight, HouseView house, DecisionView decision, String otherwise) {
        LocalDate due = decision.dueOn();
        return due == null ? otherwise : "By " + sight.day(house, due);
    }

    private static boolean isChosen(DecisionView decision) {
        return decision.alternatives().isEmpty() || decision.chosenAlternative() != null;
    }

    private static boolean given(DecisionView decision, Role role) {
        return decision.approvals().stream()
                .anyMatch(a -> a.role() == role
                        && !a.replaced()
                        && (a.state() == ApprovalState.STANDS || a.state() == ApprovalState.CARRIED_OVER));
    }

    private static String chosen(DecisionView decision) {
        return decision.alternatives().stream()
                .filter(a -> a.id().equals(decision.chosenAlternative()))
                .findFirst()
                .map(a -> Words.say(a.title() + (decision.reason().isBlank() ? "" : ": " + decision.reason())))
                .orElse(Words.sentence(decision.reason().isBlank() ? decision.question() : decision.reason()));
    }

    /** What keeps a decision from being settled. */
    static String missing(DecisionView decision) {
        if (decision.state() == DecisionState.LAPSED) {
            return "Its approval has lapsed.";
        }
        if (decision.state() == DecisionState.FRESH_LOOK) {
            return "It needs a fresh look.";
        }
        String proof = decision.proofs().isEmpty() ? "No proof is behind it" : "";
        if (!isChosen(decision)) {
            return Words.say("Nothing is chosen yet", proof);
        }
        List<String> waits = new ArrayList<>(decision.approvers().stream()
                .filter(role -> !given(decision, role))
                .map(Role::label)
                .toList());
        return Words.say(proof, waits.isEmpty() ? "" : "Waits for " + Words.list(waits));
    }

    private static String href(HouseView house, DecisionView decision) {
        return "/houses/" + house.id() + "/decisions/" + decision.code();
    }

    /** The last word on a decision where the office or the design owes the answer: somebody of this role said it. */
    List<StartMatter> unanswered(Sight sight, Role role, Speakers speakers) {
        List<StartMatter> matters = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            Set<String> names = speakers.of(house.id(), role);
            if (names.isEmpty()) {
                continue;
            }
            for (DecisionView decision : decisions.list(house.id())) {
                DecisionView.RemarkView last = last(decision);
                if (last != null && names.contains(last.person())) {
                    matters.add(new StartMatter(
                            "now",
                            "Answer",
                            house.id(),
                            decision.title(),
                            href(house, decision),
                            "“" + last.text() + "”",
                            List.of(),
                            "Waiting since " + sight.day(house, last.at()) + "."));
                }
            }
        }
        return matters;
    }

    /** What others said lately. */
    List<StartMatter> remarks(Sight sight, int days, String ownName) {
        record Said(HouseView house, DecisionView decision, DecisionView.RemarkView remark) {}
        return sight
                .all(house -> decisions.list(house.id()).stream()
                        .flatMap(d -> d.comments().stream().map(r -> new Said(house, d, r))))
                .stream()
                .filter(said -> !said.remark().person().equals(ownName)
                        && said.remark().at().isAfter(sight.now().minus(Duration.ofDays(days))))
                .sorted(Comparator.comparing((Said said) -> said.remark().at()).reversed())
                .map(said -> new StartMatter(
                        "note",
                        said.remark().person(),
                        said.house().id(),
                        said.decision().title(),
                        href(said.house(), said.decision()),
                        "“" + said.remark().text() + "”",
                        List.of(),
                        Words.sentence(sight.day(said.house(), said.remark().at()))))
                .toList();
    }

    private static DecisionView.@Nullable RemarkView last(DecisionView decision) {
        return decision.comments().stream()
                .max(Comparator.comparing(DecisionView.RemarkView::at))
                .orElse(null);
    }

    /** Who speaks in which role for a house. */
    interface Speakers {
        Set<String> of(String houseId, Role role);
    }
}
