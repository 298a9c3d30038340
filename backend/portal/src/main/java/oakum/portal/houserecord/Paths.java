package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Unit;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.houserecord.standing.Issue;
import org.jspecify.annotations.Nullable;

/** Tells what a named path means. */
final class Paths {
    private static final Pattern STEP = Pattern.compile("\\.?([A-Za-z0-9]+)(?:\\[([^]]*)])?");

    private Paths() {}

    static PathInfo describe(String path, Map<String, String> values, Map<String, Proof> proofs) {
        String key = Issue.proofOf(path);
        if (key != null) {
            return result(path, key, proofs.get(key));
        }
        return PartKind.ofPath(path)
                .map(kind -> walk(path, path.substring(kind.key().length() + 1), kind.key(), kind.fields(), "", values))
                .orElseGet(() -> unknown(path));
    }

    private static PathInfo result(String path, String key, @Nullable Proof proof) {
        String pointer = path.substring(Math.min(path.length(), "results.".length() + key.length() + 1));
        if (proof == null) {
            return unknown(path);
        }
        Proof.Submission submission = proof.content().submission();
        if (submission != null) {
            return submission.results().stream()
                    .filter(r -> r.name().equals(pointer))
                    .findFirst()
                    .map(r -> new PathInfo(path, r.label(), Unit.valueOf(r.unit()), null))
                    .orElseGet(() -> unknown(path));
        }
        String id = proof.content().calculation();
        List<Field> fields = id == null
                ? List.of()
                : Catalogue.find(id).map(Calculation::outputs).orElse(List.of());
        return walk(path, pointer, "results." + key, fields, "", proof.content().outputs());
    }

    private static PathInfo walk(
            String path, String rest, String at, List<Field> fields, String label, Map<String, String> values) {
        Matcher step = STEP.matcher(rest);
        if (!step.lookingAt()) {
            return unknown(path);
        }
        String name = step.group(1);
        String row = step.group(2);
        Field field =
                fields.stream().filter(f -> f.name().equals(name)).findFirst().orElse(null);
        if (field == null) {
            return unknown(path);
        }
        String here = at + "." + name + (row == null ? "" : "[" + row + "]");
        String shown = row == null ? field.label() : values.getOrDefault(here + ".label", field.label() + " " + row);
        String whole = label.isEmpty() ? shown : label + ": " + shown;
        String after = rest.substring(step.end());
        if (after.isEmpty()) {
            return new PathInfo(path, whole, field.unit(), field);
        }
        return walk(path, after, here, field.fields(), whole, values);
    }

    private static PathInfo unknown(String path) {
        return new PathInfo(path, path, null, null);
    }
}
