package oakum.portal.calculation;

import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.http.MalformedBody;
import oakum.portal.http.Problem;
import org.springframework.stereotype.Service;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The catalogue for other modules: find, compute, and records to and from JSON. Stores nothing. */
@Service
public class Calculations {
    private final JsonMapper json;

    Calculations(JsonMapper json) {
        this.json = json;
    }

    /** Every calculation, in printed order. */
    public List<Calculation<?, ?>> all() {
        return Catalogue.ALL;
    }

    /**
     * One calculation.
     *
     * @throws Problem 404
     */
    public Calculation<?, ?> find(String id) {
        return Catalogue.find(id).orElseThrow(() -> Problem.notFound("calculation", id));
    }

    /**
     * Computes from JSON.
     *
     * @param inputs an object with the declared inputs, SI
     * @throws Problem 404 where there is no such calculation, 400 where the JSON does not fit its inputs
     * @throws oakum.physics.calculation.Refused where a value is outside its limits
     */
    public Answer<?, ?> calculate(String id, JsonNode inputs) {
        return fromJson(find(id), inputs);
    }

    private <I extends Record, O extends Record> Answer<I, O> fromJson(Calculation<I, O> calculation, JsonNode inputs) {
        return calculation.calculate(read(calculation.inputType(), inputs));
    }

    /**
     * Computes from pointers and canonical texts, as a proof keeps them.
     *
     * @param leaves pointer to text, as {@link Canonical#flatten} gives them
     * @throws Problem 404 where there is no such calculation
     * @throws oakum.physics.calculation.Refused where a value is missing, is no number or is outside its limits
     */
    public Answer<?, ?> calculateFlat(String id, Map<String, String> leaves) {
        return fromLeaves(find(id), leaves);
    }

    private static <I extends Record, O extends Record> Answer<I, O> fromLeaves(
            Calculation<I, O> calculation, Map<String, String> leaves) {
        return calculation.calculate(Canonical.read(calculation.inputType(), leaves));
    }

    /**
     * A declared record out of JSON, strictly; its limits are not checked here.
     *
     * @throws Problem 400 {@code malformed-body} naming the field
     */
    public <R extends Record> R read(Class<R> type, JsonNode node) {
        try {
            R record = json.treeToValue(node, type);
            if (record == null) {
                throw Problem.malformed("", "The body must be an object, not null.");
            }
            return record;
        } catch (JacksonException e) {
            throw MalformedBody.of(e);
        }
    }

    /** A declared record as JSON: its declared fields and nothing else, numbers at full precision. */
    public JsonNode toJson(Record record) {
        return RecordJson.of(record);
    }
}
