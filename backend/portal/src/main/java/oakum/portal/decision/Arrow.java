package oakum.portal.decision;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * "A touches B because".
 *
 * @param from code of a decision, or a path of the record
 * @param to code of the decision that is touched
 * @param hard whether B lapses when A moves; otherwise B asks for a fresh look
 * @param changes what else of A must change, in words; every change that no trigger watches counts as such. Where it is
 *     empty and a watched value is there, only the watched values count
 * @param triggers the values of A that must change by more than their band
 */
record Arrow(String from, String to, boolean hard, String because, String changes, List<Trigger> triggers) {

    /**
     * What a move of A makes of the arrow.
     *
     * @param fires whether it reaches B
     * @param quiet which values moved within their band, in sentences; empty where none did or the arrow fires
     */
    record Move(boolean fires, List<String> quiet) {}

    /** What must change, in words: "core, supply ±10 %". */
    String trigger() {
        return Stream.concat(
                        Stream.of(changes).filter(words -> !words.isEmpty()),
                        triggers.stream().map(Trigger::text))
                .collect(Collectors.joining(", "));
    }

    /** Compares what its source was with what it is. */
    Move moved(Approval.Neighbour before, Approval.Neighbour now) {
        if (!Objects.equals(before.chosen(), now.chosen())) {
            return new Move(true, List.of());
        }
        Set<String> paths = new LinkedHashSet<>(before.values().keySet());
        paths.addAll(now.values().keySet());
        boolean others = !changes.isEmpty() || paths.stream().noneMatch(this::watched);
        List<String> quiet = new ArrayList<>();
        for (String path : ApprovalStanding.changed(before.values(), now.values())) {
            if (!watched(path)) {
                if (others) {
                    return new Move(true, List.of());
                }
                continue;
            }
            for (Trigger trigger : triggers) {
                if (trigger.watches(path)) {
                    if (trigger.fires(before.values().get(path), now.values().get(path))) {
                        return new Move(true, List.of());
                    }
                    quiet.add(because + "; " + trigger.quietText());
                }
            }
        }
        return new Move(false, List.copyOf(quiet));
    }

    private boolean watched(String path) {
        return triggers.stream().anyMatch(trigger -> trigger.watches(path));
    }
}
