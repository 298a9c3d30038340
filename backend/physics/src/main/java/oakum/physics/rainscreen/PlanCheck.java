package oakum.physics.rainscreen;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Verdict;

/** One rule held against a plan. */
public record PlanCheck(
        @Entry(label = "Key") String id,

        @Entry(label = "Rule") String rule,

        @Entry(label = "Kept") Verdict verdict,

        @Entry(label = "Because") String reason,

        @Entry(label = "Source") String source) {

    static PlanCheck of(String id, String rule, boolean kept, String reason, Source source) {
        return new PlanCheck(id, rule, kept ? Verdict.PASSES : Verdict.FAILS, reason, source.printed());
    }

    static PlanCheck unknown(String id, String rule, String reason, Source source) {
        return new PlanCheck(id, rule, Verdict.NOT_PROVEN, reason, source.printed());
    }
}
