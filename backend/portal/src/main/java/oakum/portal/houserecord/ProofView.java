package oakum.portal.houserecord;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.houserecord.standing.Relied;
import org.jspecify.annotations.Nullable;

/**
 * One issue of a proof.
 *
 * @param state null on an issue that a later one replaced
 * @param calculation id, or null for submitted evidence
 * @param relied what it relied on then
 * @param differences what of that is another value now
 * @param newVersion the calculation's version now where it is another, else null
 * @param waitingFor proofs above it that are not current
 * @param actions what the caller may do now
 */
public record ProofView(
        String key,
        String title,
        Proof.Kind kind,
        int issue,
        @Nullable ProofState state,
        @Nullable String calculation,
        String calculationVersion,
        List<Binding> bindings,
        List<Relied> relied,
        Map<String, String> inputs,
        List<ProofOutput> outputs,
        Map<String, String> results,
        List<Notice> notices,
        Proof.@Nullable Submission submission,
        String copyCode,
        String madeBy,
        Instant madeAt,
        String reason,
        List<ValueDifference> differences,
        @Nullable String newVersion,
        List<String> waitingFor,
        List<String> actions) {}
