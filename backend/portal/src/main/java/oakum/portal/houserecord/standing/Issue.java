package oakum.portal.houserecord.standing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What standing needs to know of the latest issue of a proof.
 *
 * @param key the proof's name in paths: {@code results.<key>.<output>}
 * @param calculation id of the calculation, or null for submitted evidence, which nobody can recompute
 * @param version of the calculation
 * @param relied every value that came from the record
 * @param inputs every input as text, pointer by pointer
 * @param outputs the printed result as text, pointer by pointer
 */
public record Issue(
        String key,
        @Nullable String calculation,
        String version,
        List<Binding> bindings,
        List<Relied> relied,
        Map<String, String> inputs,
        Map<String, String> outputs) {

    static final String RESULTS = "results.";

    /** The proofs whose results this one is bound to. */
    public Set<String> above() {
        return above(bindings);
    }

    static Set<String> above(List<Binding> bindings) {
        Set<String> keys = new LinkedHashSet<>();
        for (Binding binding : bindings) {
            String key = binding.path() == null ? null : proofOf(binding.path());
            if (key != null) {
                keys.add(key);
            }
        }
        return keys;
    }

    /** The proof whose result a path names, or null where it names a value of the record. */
    public static @Nullable String proofOf(String path) {
        if (!path.startsWith(RESULTS)) {
            return null;
        }
        int end = path.indexOf('.', RESULTS.length());
        return end < 0 ? path.substring(RESULTS.length()) : path.substring(RESULTS.length(), end);
    }
}
