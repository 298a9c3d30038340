package oakum.portal.houserecord.standing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import org.jspecify.annotations.Nullable;

/** Compares today's values with what the proofs of a house relied on, and computes what they would say now. */
public final class Standing {
    private final Map<String, Issue> issues;
    private final Function<String, Optional<Calculation<?, ?>>> calculations;

    /**
     * The proofs of one house.
     *
     * @param issues the latest issue of each
     * @param calculations finds a calculation by its id
     */
    public Standing(Map<String, Issue> issues, Function<String, Optional<Calculation<?, ?>>> calculations) {
        this.issues = inOrder(issues);
        this.calculations = calculations;
    }

    /**
     * How one proof stands.
     *
     * @param differences what it relied on that is another value now
     * @param newVersion the calculation's version now where it is another, else null
     * @param waitingFor the proofs above it that are not current
     */
    public record Of(
            ProofState state,
            List<Difference> differences,
            @Nullable String newVersion,
            List<String> waitingFor) {}

    /**
     * What a proof says with given values.
     *
     * @param inputs as used
     * @param relied which of them came from the record
     * @param outputs the printed result; empty where it could not be computed
     * @param recomputed whether anything it relies on differs from its issue, so that it was computed anew
     * @param refusal why it could not be computed, or null
     * @param copyCode of this result; empty where it could not be computed
     */
    public record Result(
            Map<String, String> inputs,
            List<Relied> relied,
            Map<String, String> outputs,
            List<Notice> notices,
            String version,
            boolean recomputed,
            @Nullable String refusal,
            String copyCode) {}

    /** How every proof stands against these values of the record. */
    public Map<String, Of> states(Map<String, String> record) {
        Map<String, String> values = withResults(record);
        Map<String, Of> states = new LinkedHashMap<>();
        issues.forEach((key, issue) -> {
            List<Difference> differences = Resolved.differences(
                    issue.relied(),
                    Resolved.of(issue.bindings(), fields(issue), values).relied());
            String version = versionNow(issue);
            boolean otherVersion =
                    issue.calculation() != null && !issue.version().equals(version);
            List<String> waitingFor = issue.above().stream()
                    .filter(above -> {
                        Of state = states.get(above);
                        return state != null && state.state() != ProofState.CURRENT;
                    })
                    .toList();
            ProofState state = !differences.isEmpty() || otherVersion
                    ? ProofState.INPUTS_CHANGED
                    : waitingFor.isEmpty() ? ProofState.CURRENT : ProofState.WAITING;
            states.put(key, new Of(state, differences, otherVersion ? version : null, waitingFor));
        });
        return states;
    }

    /** The record's values together with the printed results of the latest issues. */
    public Map<String, String> withResults(Map<String, String> record) {
        Map<String, String> values = new LinkedHashMap<>(record);
        issues.values().forEach(issue -> putResults(values, issue.key(), issue.outputs()));
        return values;
    }

    /**
     * What every proof would say with these values: the first ones from the record, the later ones from the new results
     * above. Where everything that a proof relies on comes out as it was, its issue is kept and nothing is computed.
     */
    public Map<String, Result> recomputed(Map<String, String> record) {
        Map<String, String> values = new LinkedHashMap<>(record);
        Map<String, Result> results = new LinkedHashMap<>();
        issues.forEach((key, issue) -> {
            Result result = result(issue, values);
            results.put(key, result);
            putResults(values, key, result.outputs());
        });
        return results;
    }

    private Result result(Issue issue, Map<String, String> values) {
        Resolved resolved = Resolved.of(issue.bindings(), fields(issue), values);
        String version = versionNow(issue);
        boolean same = Resolved.differences(issue.relied(), resolved.relied()).isEmpty()
                && (issue.calculation() == null || issue.version().equals(version));
        if (same) {
            return new Result(
                    issue.inputs(), issue.relied(), issue.outputs(), List.of(), issue.version(), false, null, "");
        }
        Calculation<?, ?> calculation = calculation(issue);
        if (calculation == null) {
            String why = issue.calculation() == null
                    ? "Submitted evidence cannot be recomputed; whoever submitted it is asked again."
                    : "The calculation " + issue.calculation() + " is no longer in the catalogue.";
            return refused(resolved, issue.version(), why);
        }
        return compute(calculation, resolved);
    }

    private static Result compute(Calculation<?, ?> calculation, Resolved resolved) {
        try {
            return required(calculation, resolved);
        } catch (Refused e) {
            return refused(resolved, calculation.version(), Objects.requireNonNullElse(e.getMessage(), ""));
        }
    }

    /**
     * Computes with drawn inputs.
     *
     * @throws Refused where one is missing or breaks a limit
     */
    public static Result required(Calculation<?, ?> calculation, Resolved resolved) {
        Answer<?, ?> answer = calculate(calculation, resolved.inputs());
        return new Result(
                Canonical.flatten(answer.input()),
                resolved.relied(),
                Canonical.flatten(answer.printed()),
                answer.notices(),
                calculation.version(),
                true,
                null,
                answer.copyCode());
    }

    private static <I extends Record, O extends Record> Answer<I, O> calculate(
            Calculation<I, O> calculation, Map<String, String> inputs) {
        return calculation.calculate(Canonical.read(calculation.inputType(), inputs));
    }

    private static Result refused(Resolved resolved, String version, String why) {
        return new Result(resolved.inputs(), resolved.relied(), Map.of(), List.of(), version, true, why, "");
    }

    /** A proof and every proof that it rests on, all the way up. */
    public Set<String> upTo(String key) {
        Deque<String> ahead = new ArrayDeque<>(List.of(key));
        Set<String> found = new HashSet<>();
        while (!ahead.isEmpty()) {
            Issue issue = issues.get(ahead.pop());
            if (issue != null && found.add(issue.key())) {
                ahead.addAll(issue.above());
            }
        }
        return found;
    }

    /** Whether binding a proof like this would make it rest on itself. */
    public boolean closesLoop(String key, List<Binding> bindings) {
        return Issue.above(bindings).stream()
                .anyMatch(above -> above.equals(key) || upTo(above).contains(key));
    }

    private List<Field> fields(Issue issue) {
        Calculation<?, ?> calculation = calculation(issue);
        return calculation == null ? List.of() : calculation.inputs();
    }

    private @Nullable String versionNow(Issue issue) {
        Calculation<?, ?> calculation = calculation(issue);
        return calculation == null ? null : calculation.version();
    }

    private @Nullable Calculation<?, ?> calculation(Issue issue) {
        String id = issue.calculation();
        return id == null ? null : calculations.apply(id).orElse(null);
    }

    private static void putResults(Map<String, String> values, String key, Map<String, String> outputs) {
        outputs.forEach((pointer, value) -> values.put(Issue.RESULTS + key + "." + pointer, value));
    }

    /** Each proof after those above it; loops are refused when a proof is made, so there is always such an order. */
    private static Map<String, Issue> inOrder(Map<String, Issue> issues) {
        Map<String, Issue> ordered = new LinkedHashMap<>();
        List<String> path = new ArrayList<>();
        issues.keySet().forEach(key -> visit(key, issues, ordered, path));
        return ordered;
    }

    private static void visit(String key, Map<String, Issue> issues, Map<String, Issue> ordered, List<String> path) {
        Issue issue = issues.get(key);
        if (issue == null || ordered.containsKey(key)) {
            return;
        }
        if (path.contains(key)) {
            throw new IllegalStateException("proofs rest on each other: " + path);
        }
        path.add(key);
        issue.above().forEach(above -> visit(above, issues, ordered, path));
        path.remove(key);
        ordered.put(key, issue);
    }
}
