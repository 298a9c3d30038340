package oakum.portal.calculation;

import java.util.List;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Notice;
import tools.jackson.databind.JsonNode;

/**
 * What a calculation answers.
 *
 * @param inputs as used
 * @param output at full precision
 * @param printed rounded once to the declared steps; what people read and later calculations use
 * @param rejected whether a notice forbids using the result as evidence
 * @param copyCode six digits that stand for calculation, version, inputs and printed result
 */
public record AnswerJson(
        NamedJson calculation,
        JsonNode inputs,
        JsonNode output,
        JsonNode printed,
        List<NoticeJson> notices,
        List<DeclarationJson.CautionJson> cautions,
        boolean rejected,
        String copyCode) {

    /** Which calculation. */
    public record NamedJson(String id, String version, String title) {}

    /** Something said beside the numbers. */
    public record NoticeJson(
            String code, Notice.Weight weight, String field, String sentence, DeclarationJson.SourceJson source) {
        public static NoticeJson of(Notice notice) {
            return new NoticeJson(
                    notice.code(),
                    notice.weight(),
                    notice.field(),
                    notice.sentence(),
                    DeclarationJson.SourceJson.of(notice.source()));
        }
    }

    /** The answer of a calculation as it is sent. */
    public static AnswerJson of(Answer<?, ?> answer) {
        return new AnswerJson(
                new NamedJson(
                        answer.calculation().id(),
                        answer.calculation().version(),
                        answer.calculation().title()),
                RecordJson.of(answer.input()),
                RecordJson.of(answer.output()),
                RecordJson.of(answer.printed()),
                answer.notices().stream().map(NoticeJson::of).toList(),
                answer.calculation().cautions().stream()
                        .map(DeclarationJson.CautionJson::of)
                        .toList(),
                answer.rejected(),
                answer.copyCode());
    }
}
