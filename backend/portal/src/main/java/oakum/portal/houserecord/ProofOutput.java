package oakum.portal.houserecord;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.calculation.FieldJson;
import org.jspecify.annotations.Nullable;

/**
 * One number of a printed result.
 *
 * @param name its pointer
 * @param unit null where it is no number
 * @param value canonical text, null where there is none
 * @param limit the greatest value allowed, as text, or null
 * @param verdict how it compares with the limit, or null
 * @param leading whether it is one of the few that people compare
 */
public record ProofOutput(
        String name,
        String label,
        String symbol,
        FieldJson.@Nullable UnitJson unit,
        @Nullable String value,
        @Nullable String limit,
        @Nullable Verdict verdict,
        boolean leading) {

    private static final List<String> VERDICTS =
            Arrays.stream(Verdict.values()).map(Enum::name).toList();

    /**
     * The numbers of a result, in the order of the declaration.
     *
     * @param content which proof
     * @param inputs of the result
     * @param outputs of the result; empty where it could not be computed
     */
    public static List<ProofOutput> of(Proof.Content content, Map<String, String> inputs, Map<String, String> outputs) {
        Proof.Submission submission = content.submission();
        if (submission != null) {
            return submission.results().stream()
                    .map(r -> submitted(r, outputs.get(r.name())))
                    .toList();
        }
        String id = content.calculation();
        return id == null ? List.of() : ofCalculation(id, inputs, outputs);
    }

    /** The same for the printed result of a calculation that is no proof. */
    public static List<ProofOutput> ofCalculation(String id, Map<String, String> inputs, Map<String, String> outputs) {
        List<Field> fields = Catalogue.find(id).map(Calculation::outputs).orElse(List.of());
        List<ProofOutput> list = new ArrayList<>();
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            if (field.kind() != Field.Kind.ROWS && field.kind() != Field.Kind.GROUP) {
                list.add(computed(field, following(fields, i), inputs, outputs));
            }
        }
        return list;
    }

    private static ProofOutput submitted(Proof.SubmittedResult result, @Nullable String value) {
        String limit = result.limit() == null ? null : Double.toString(result.limit());
        return new ProofOutput(
                result.name(),
                result.label(),
                "",
                FieldJson.UnitJson.of(Unit.valueOf(result.unit())),
                value,
                limit,
                compare(value, limit),
                true);
    }

    private static ProofOutput computed(
            Field field, @Nullable Field next, Map<String, String> inputs, Map<String, String> outputs) {
        String value = outputs.get(field.name());
        String limit = field.limitField().isEmpty()
                ? null
                : outputs.getOrDefault(field.limitField(), inputs.get(field.limitField()));
        Verdict verdict = null;
        if (isVerdict(field) && value != null) {
            verdict = Verdict.valueOf(value);
        } else if (limit != null) {
            // a calculation that knows its uncertainty says its verdict right behind the number
            String said = next != null && isVerdict(next) ? outputs.get(next.name()) : null;
            verdict = said == null ? compare(value, limit) : Verdict.valueOf(said);
        }
        return new ProofOutput(
                field.name(),
                field.label(),
                field.symbol(),
                FieldJson.UnitJson.ofNullable(field.unit()),
                value,
                limit,
                verdict,
                field.leading());
    }

    private static @Nullable Field following(List<Field> fields, int place) {
        return place + 1 < fields.size() ? fields.get(place + 1) : null;
    }

    private static boolean isVerdict(Field field) {
        return field.kind() == Field.Kind.CHOICE
                && field.options().stream().map(Field.Option::id).toList().equals(VERDICTS);
    }

    private static @Nullable Verdict compare(@Nullable String value, @Nullable String limit) {
        return value == null || limit == null
                ? null
                : Verdict.atMost(Double.parseDouble(value), 0, Double.parseDouble(limit));
    }
}
