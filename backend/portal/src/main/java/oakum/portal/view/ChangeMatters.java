package oakum.portal.view;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import oakum.portal.decision.ChangeEntry;
import oakum.portal.decision.Trials;
import oakum.portal.houserecord.HouseView;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** What became another value lately, by whom and why. */
@Component
class ChangeMatters {
    private static final int MOST_VALUES = 2;

    private final Trials trials;

    ChangeMatters(Trials trials) {
        this.trials = trials;
    }

    /** The changes of so many days, the latest first. */
    List<StartMatter> since(Sight sight, int days, Predicate<ChangeEntry> wanted) {
        record Changed(HouseView house, ChangeEntry change) {}
        return sight
                .all(house -> trials.history(house.id()).stream()
                        .filter(change -> change.when().isAfter(sight.now().minus(Duration.ofDays(days))))
                        .filter(wanted)
                        .map(change -> new Changed(house, change)))
                .stream()
                .sorted(Comparator.comparing((Changed c) -> c.change().when()).reversed())
                .map(c -> matter(sight, c.house(), c.change()))
                .toList();
    }

    private static StartMatter matter(Sight sight, HouseView house, ChangeEntry change) {
        String values = change.values().stream()
                .limit(MOST_VALUES)
                .map(v -> Words.sentence(v.label() + " " + sight.shown().became(v.old(), v.present(), v.unit())))
                .reduce((a, b) -> a + " " + b)
                .orElse("");
        int more = change.values().size() - MOST_VALUES;
        return new StartMatter(
                change.open() ? "changed" : "note",
                switch (change.kind()) {
                    case PART -> "Changed";
                    case PROOF -> "Proof, issue " + change.number();
                    case APPROVAL -> "Approved";
                    case WITHDRAWAL -> "Withdrawn";
                },
                house.id(),
                change.title(),
                "/houses/" + house.id() + "/changes",
                values + (more > 0 ? " And " + Words.count(more, "value", "values") + " more." : ""),
                change.open() ? List.of("something still rests on the old value") : List.of(),
                Words.say(change.who() + ", " + sight.day(house, change.when()), change.why()));
    }
}
