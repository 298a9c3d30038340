package oakum.portal.decision;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Verdict;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.ProofOutput;
import oakum.portal.http.Problem;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * What fails in the proofs behind a decision, and who may approve it all the same; pure.
 *
 * @param sentence which number of which proof fails, against which limit
 * @param needsException whether an approval needs a written exception: so for the leading results of a proof. What else
 *     fails, as the house pressure with its make-up air failed, is shown to the approver, who judges it with the rest
 */
record Failing(String sentence, boolean needsException) {
    private static final int LONGEST_REASON = 1000;

    /** Every failing result of the proofs; a table's lines are no results of their own. */
    static List<Failing> of(DecisionContent content, Facts facts) {
        List<Failing> found = new ArrayList<>();
        for (String key : content.proofs()) {
            Proof proof = facts.snapshot().proofs().get(key);
            if (proof != null) {
                addFailing(found, proof);
            }
        }
        return List.copyOf(found);
    }

    private static void addFailing(List<Failing> found, Proof proof) {
        ProofOutput before = null;
        for (ProofOutput output : ProofOutput.of(
                proof.content(), proof.content().inputs(), proof.content().outputs())) {
            // a verdict right behind its number says the same once more
            boolean again = output.unit() == null && before != null && before.verdict() == Verdict.FAILS;
            if (output.verdict() == Verdict.FAILS && !again) {
                found.add(new Failing(
                        proof.content().title() + ", issue " + proof.issue() + ": " + words(output), output.leading()));
            }
            before = output;
        }
    }

    private static String words(ProofOutput output) {
        if (output.unit() == null) {
            return output.label() + " fails.";
        }
        String unit = " " + output.unit().id().si().symbol();
        return output.label() + " fails: " + output.value() + unit
                + (output.limit() == null ? "." : ", at most " + output.limit() + unit + ".");
    }

    static List<String> sentences(List<Failing> failing) {
        return failing.stream().map(Failing::sentence).toList();
    }

    static boolean needException(List<Failing> failing) {
        return failing.stream().anyMatch(Failing::needsException);
    }

    /**
     * The reason under which an approval of something that fails is given, or null where none is needed or given.
     *
     * @param excepted the principal's standing exception of exactly this, or null
     * @param reason as it was typed, stripped; empty where none was
     * @throws Problem 409 {@code verdict-fails} where one is needed and missing, 422 {@code nothing-to-except} where
     *     nothing fails, 403 where this role may give none
     */
    static @Nullable String exception(
            String code,
            DecisionContent content,
            List<Failing> failing,
            @Nullable Approval excepted,
            Role role,
            String reason) {
        if (reason.isEmpty()) {
            if (!needException(failing)) {
                return null;
            }
            if (excepted != null) {
                return "as the " + excepted.role().label() + ": " + excepted.exceptionReason();
            }
            List<String> sentences = failing.stream()
                    .filter(Failing::needsException)
                    .map(Failing::sentence)
                    .toList();
            throw Problem.conflict(
                            "verdict-fails",
                            "Not approved: " + String.join(" ", sentences)
                                    + " Change the design, or give a written exception"
                                    + (content.safetyList() ? ", which here only the principal may." : "."))
                    .with("failing", sentences);
        }
        if (failing.isEmpty()) {
            throw Problem.unprocessable(
                    "nothing-to-except",
                    "exception",
                    "Nothing fails in " + code + "; approve it without an exception.");
        }
        if (content.safetyList() && role != Role.PRINCIPAL) {
            throw Problem.forbidden(
                    "Decision " + code + " is on the safety list; only the principal may except it from what fails.");
        }
        if (reason.length() > LONGEST_REASON) {
            throw Problem.unprocessable(
                    "outside-limits", "exception", "An exception has at most " + LONGEST_REASON + " characters.");
        }
        return reason;
    }

    /** The principal's standing exception of exactly this, under which the other roles approve; or null. */
    static @Nullable Approval excepted(
            String code, DecisionContent content, Facts facts, List<Approval> given, List<Failing> failing) {
        return given.stream()
                .filter(a -> a.code().equals(code)
                        && a.role() == Role.PRINCIPAL
                        && a.exceptionReason() != null
                        && a.failing().equals(sentences(failing))
                        && ApprovalStanding.of(a, content, facts).state() == ApprovalState.STANDS)
                .reduce((earlier, later) -> later)
                .orElse(null);
    }
}
