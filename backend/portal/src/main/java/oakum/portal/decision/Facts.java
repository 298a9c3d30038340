package oakum.portal.decision;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.houserecord.standing.Standing;
import org.jspecify.annotations.Nullable;

/**
 * The house as approvals are held against it: as it is, or as it would be in a trial.
 *
 * @param snapshot the record and the latest issues, from one read
 * @param values every value of the record, as it is or as tried
 * @param states how each proof stands against these values
 * @param results what each proof says with these values
 * @param decisions every decision of the house
 */
record Facts(
        Snapshot snapshot,
        Map<String, String> values,
        Map<String, Standing.Of> states,
        Map<String, Standing.Result> results,
        Map<String, DecisionContent> decisions) {

    static Facts of(
            Snapshot snapshot, Map<String, String> values, Standing standing, Map<String, DecisionContent> decisions) {
        return new Facts(snapshot, values, standing.states(values), standing.recomputed(values), decisions);
    }

    /** What the source of an arrow is now: a decision by its choice and the values it settles, a path by its value. */
    Approval.Neighbour neighbour(String source) {
        DecisionContent decision = decisions.get(source);
        if (decision != null) {
            return new Approval.Neighbour(decision.chosenAlternative(), under(decision.governedPaths()));
        }
        return new Approval.Neighbour(null, under(Set.of(source)));
    }

    /** The values at or beneath some paths. */
    Map<String, String> under(Set<String> paths) {
        Map<String, String> found = new LinkedHashMap<>();
        values.forEach((at, value) -> {
            if (paths.stream().anyMatch(path -> covers(path, at))) {
                found.put(at, value);
            }
        });
        return found;
    }

    private static boolean covers(String path, String at) {
        return at.startsWith(path)
                && (at.length() == path.length() || at.charAt(path.length()) == '.' || at.charAt(path.length()) == '[');
    }

    @Nullable
    DecisionContent decision(String code) {
        return decisions.get(code);
    }
}
