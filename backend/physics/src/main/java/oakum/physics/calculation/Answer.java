package oakum.physics.calculation;

import java.util.ArrayList;
import java.util.List;

/**
 * What a calculation answers.
 *
 * @param calculation the declaration it came from
 * @param input the inputs as used
 * @param output the result at full precision
 * @param printed the result with every quantity rounded once to its declared step; this is what later calculations use
 * @param notices what the limits and the calculation say beside the numbers
 */
public record Answer<I extends Record, O extends Record>(
        Calculation<I, O> calculation, I input, O output, O printed, List<Notice> notices) {

    static <I extends Record, O extends Record> Answer<I, O> of(Calculation<I, O> calculation, I input, O output) {
        List<Notice> notices = new ArrayList<>(Limits.advice(input));
        if (output instanceof HasNotices said) {
            notices.addAll(said.notices());
        }
        return new Answer<>(calculation, input, output, Canonical.rounded(output), List.copyOf(notices));
    }

    /** Whether a notice forbids using the result as evidence. */
    public boolean rejected() {
        return notices.stream().anyMatch(n -> n.weight() == Notice.Weight.REJECTED);
    }

    /** Six digits that stand for the calculation, its version, all inputs and the printed result. */
    public String copyCode() {
        return Canonical.copyCode(calculation.id() + " " + calculation.version() + "\n" + Canonical.lines(input)
                + "\n--\n" + Canonical.lines(printed));
    }
}
