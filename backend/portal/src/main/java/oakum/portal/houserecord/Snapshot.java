package oakum.portal.houserecord;

import java.util.LinkedHashMap;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.portal.houserecord.standing.Issue;

/**
 * Everything of one house from one read, so that values and what they are compared with belong together.
 *
 * @param values every value of the record by path, without results
 * @param proofs the latest issue of each proof
 */
public record Snapshot(String houseId, Parts parts, Map<String, String> values, Map<String, Proof> proofs) {

    /** The same proofs as standing reads them. */
    public Map<String, Issue> issues() {
        Map<String, Issue> issues = new LinkedHashMap<>();
        proofs.forEach((key, proof) -> issues.put(key, proof.asIssue()));
        return issues;
    }

    static Map<String, String> values(Parts parts) {
        Map<String, String> values = new LinkedHashMap<>();
        for (PartKind kind : PartKind.values()) {
            Canonical.flatten(parts.of(kind)).forEach((pointer, text) -> values.put(kind.key() + "." + pointer, text));
        }
        return values;
    }
}
