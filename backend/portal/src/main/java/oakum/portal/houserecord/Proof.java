package oakum.portal.houserecord;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import oakum.physics.calculation.Notice;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Issue;
import oakum.portal.houserecord.standing.Relied;
import org.jspecify.annotations.Nullable;

/**
 * One issue of a proof, as it was kept; never rewritten.
 *
 * @param key its name in paths: {@code results.<key>.<output>}
 * @param issue counted from 1
 */
public record Proof(
        String key, int issue, Content content, UUID madeById, String madeBy, Instant madeAt, String reason) {

    /**
     * What is kept of an issue beside who made it, when and why.
     *
     * @param relied every value that came from the record, with its text then
     * @param inputs every input by pointer
     * @param outputs the printed result by pointer
     */
    public record Content(
            Kind kind,
            String title,
            @Nullable String calculation,
            String calculationVersion,
            List<Binding> bindings,
            List<Relied> relied,
            Map<String, String> inputs,
            Map<String, String> outputs,
            List<Notice> notices,
            @Nullable Submission submission,
            String copyCode) {}

    /** Whether the portal computed it or somebody submitted it. */
    public enum Kind {
        COMPUTED,
        SUBMITTED
    }

    /**
     * What somebody submitted instead of a calculation of ours.
     *
     * @param method how it was done, with the standard or program-free description of the steps
     * @param inputsHash hash of the files that went in, or empty
     * @param text the evidence in words
     * @param signedAs the role in whose name it is signed
     * @param results what came out, with labels and units
     */
    public record Submission(
            String method, String inputsHash, String text, String signedAs, List<SubmittedResult> results) {}

    /**
     * One submitted number.
     *
     * @param name its name in paths, which ends in its unit
     * @param unit name of a unit of the calculations
     * @param limit the greatest value allowed, or null
     */
    public record SubmittedResult(
            String name,
            String label,
            String unit,
            double value,
            @Nullable Double limit) {}

    Issue asIssue() {
        return new Issue(
                key,
                content.calculation(),
                content.calculationVersion(),
                content.bindings(),
                content.relied(),
                content.inputs(),
                content.outputs());
    }
}
