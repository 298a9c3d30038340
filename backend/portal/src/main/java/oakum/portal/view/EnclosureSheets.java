package oakum.portal.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import oakum.physics.controllayer.AssemblyFindings;
import oakum.physics.controllayer.Finding;
import oakum.portal.houserecord.EnclosurePart.Assembly;
import oakum.portal.houserecord.FilledCalculation;
import oakum.portal.houserecord.HouseCalculations;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.site.ClockShown;
import oakum.portal.site.RunningClocks;
import oakum.portal.view.Joins.JoinsFinding;
import oakum.portal.view.Joins.JoinsProof;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What the joins page and the wall page have in common: findings with today's sun days, and the proofs that stand. */
@Component
class EnclosureSheets {
    private static final String FINDINGS = "assembly-findings";
    private static final String ASSEMBLIES = "enclosure.assemblies[";

    private final HouseRecord record;
    private final HouseCalculations calculations;
    private final RunningClocks clocks;

    EnclosureSheets(HouseRecord record, HouseCalculations calculations, RunningClocks clocks) {
        this.record = record;
        this.calculations = calculations;
        this.clocks = clocks;
    }

    Snapshot snapshot(String house) {
        return record.snapshot(house);
    }

    /** The mistakes of one assembly, with the days that its membrane has stood in the sun by today. */
    List<JoinsFinding> findings(Snapshot snapshot, Assembly assembly) {
        FilledCalculation filled = calculations.fill(snapshot, FINDINGS, assembly.id());
        Integer days = assembly.cladding() == null ? null : sunDays(snapshot.houseId());
        if (days != null) {
            Map<String, String> inputs = new LinkedHashMap<>(filled.inputs());
            inputs.put("sunDaysUsedD", Canonical.text(days));
            filled = new FilledCalculation(FINDINGS, assembly.id(), filled.bindings(), inputs, filled.relied());
        }
        try {
            Answer<?, ?> answer = calculations.answer(filled);
            return ((AssemblyFindings.Result) answer.output())
                    .findings().stream().map(EnclosureSheets::shown).toList();
        } catch (Refused refused) {
            return List.of(refusal(refused));
        }
    }

    /** The membrane's clock that has run the longest; null where none was started. */
    @Nullable
    Integer sunDays(String house) {
        return clocks.list(house).stream()
                .filter(clock -> clock.id().startsWith("membrane"))
                .map(ClockShown::daysUsed)
                .max(Integer::compare)
                .orElse(null);
    }

    /** A record that contradicts itself is something to say, not something to fail with. */
    private static JoinsFinding refusal(Refused refused) {
        return new JoinsFinding(
                "cannot-be-judged",
                "NOT_PROVEN",
                "not proven",
                "",
                sentence(refused),
                "The record does not say enough.",
                "");
    }

    static String sentence(Refused refused) {
        return refused.violations().stream().map(Violation::sentence).collect(Collectors.joining(" "));
    }

    static JoinsFinding shown(Finding finding) {
        return new JoinsFinding(
                finding.id(),
                finding.weight().name(),
                finding.weight().label(),
                finding.about(),
                finding.sentence(),
                finding.reason(),
                finding.source());
    }

    /** The proofs that rest on the enclosure; of one assembly where its short name is given. */
    List<JoinsProof> proofs(Snapshot snapshot, @Nullable String assembly) {
        Map<String, Standing.Of> states = record.standing(snapshot).states(snapshot.values());
        List<JoinsProof> shown = new ArrayList<>();
        for (Proof proof : snapshot.proofs().values()) {
            List<String> paths = proof.content().bindings().stream()
                    .map(Binding::path)
                    .filter(Objects::nonNull)
                    .toList();
            boolean rests = paths.stream()
                    .anyMatch(path -> assembly == null
                            ? path.startsWith("enclosure.")
                            : path.startsWith(ASSEMBLIES + assembly + "]") || path.equals("enclosure.assemblies"));
            Standing.Of state = states.get(proof.key());
            if (rests && state != null) {
                shown.add(shown(proof, state.state(), paths));
            }
        }
        return shown;
    }

    private static JoinsProof shown(Proof proof, ProofState state, List<String> paths) {
        List<String> about = paths.stream()
                .filter(path -> path.startsWith(ASSEMBLIES))
                .map(path -> path.substring(ASSEMBLIES.length(), path.indexOf(']')))
                .distinct()
                .toList();
        return new JoinsProof(
                proof.key(),
                proof.content().title(),
                proof.content().calculation(),
                about.size() == 1 ? about.get(0) : null,
                proof.issue(),
                state,
                proof.content().copyCode());
    }
}
