package oakum.portal.commissioning;

import java.util.List;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What a measurement shows.
 *
 * @param verdict fails where one value fails; passes where every value does and nothing speaks against the measurement
 * @param findings what keeps it from being proof, whole sentences
 * @param computed what the catalogue's calculation answered, or null where none was needed
 */
public record Outcome(
        Verdict verdict,
        String verdictLabel,
        List<Compared> values,
        List<String> findings,
        @Nullable ComputedBy computed) {

    /**
     * The calculation behind an outcome, at the version of that day.
     *
     * @param printed its result rounded to the printed steps, with every point of the curve
     */
    public record ComputedBy(String calculation, String version, String copyCode, JsonNode printed) {}

    static Outcome of(List<Compared> values, List<String> findings, @Nullable ComputedBy computed) {
        Verdict verdict = verdict(values, findings);
        return new Outcome(verdict, verdict.label(), List.copyOf(values), List.copyOf(findings), computed);
    }

    private static Verdict verdict(List<Compared> values, List<String> findings) {
        List<Verdict> verdicts =
                values.stream().map(Compared::verdict).filter(v -> v != null).toList();
        if (verdicts.contains(Verdict.FAILS)) {
            return Verdict.FAILS;
        }
        boolean proven = findings.isEmpty() && !verdicts.isEmpty() && !verdicts.contains(Verdict.NOT_PROVEN);
        return proven ? Verdict.PASSES : Verdict.NOT_PROVEN;
    }
}
