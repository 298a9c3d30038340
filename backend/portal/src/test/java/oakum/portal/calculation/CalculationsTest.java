package oakum.portal.calculation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.List;
import java.util.stream.Stream;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.WorkedExample;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Every calculation of the catalogue over HTTP: what holds in Java holds there. */
@PortalTest
class CalculationsTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @Autowired
    MockMvc http;

    @Autowired
    Calculations calculations;

    static Stream<Calculation<?, ?>> all() {
        return Catalogue.ALL.stream();
    }

    static Stream<Calculation<?, ?>> withExamples() {
        return all().filter(c -> !c.workedExamples().isEmpty());
    }

    @Test
    void the_list_has_the_whole_catalogue_in_its_order() throws Exception {
        JsonNode list = JSON.readTree(answer(get("/api/v1/calculations")).getContentAsString(UTF_8));
        assertThat(list.valueStream().map(c -> c.get("id").asString()).toList())
                .isEqualTo(Catalogue.ALL.stream().map(Calculation::id).toList());
    }

    @ParameterizedTest
    @MethodSource("withExamples")
    void the_published_example_can_be_sent_as_the_declaration_shows_it(Calculation<?, ?> calculation) throws Exception {
        JsonNode declaration = JSON.readTree(
                answer(get("/api/v1/calculations/" + calculation.id())).getContentAsString(UTF_8));
        assertThat(declaration.get("version").asString()).isEqualTo(calculation.version());
        for (WorkedExample example : calculation.workedExamples()) {
            JsonNode shown = declaration
                    .get("workedExamples")
                    .valueStream()
                    .filter(e -> e.get("id").asString().equals(example.id()))
                    .findFirst()
                    .orElseThrow();
            MockHttpServletResponse sent =
                    send(calculation.id(), shown.get("inputs").toString());
            String body = sent.getContentAsString(UTF_8);
            assertThat(sent.getStatus()).as(body).isEqualTo(200);
            // the numbers over HTTP are those of the Java function, bit for bit
            Answer<?, ?> inJava = calculations.calculateFlat(calculation.id(), example.inputs());
            JsonNode answered = JSON.readTree(body);
            assertThat(answered.get("output")).isEqualTo(reread(inJava.output()));
            assertThat(answered.get("printed")).isEqualTo(reread(inJava.printed()));
            assertThat(answered.get("copyCode").asString()).isEqualTo(inJava.copyCode());
            assertThat(answered.get("cautions").size()).isPositive();
            for (WorkedExample.Expected expected : example.expected()) {
                assertThat(expected.agrees(
                                Canonical.flatten(inJava.output()).getOrDefault(expected.pointer(), "absent")))
                        .as("%s %s", example.id(), expected)
                        .isTrue();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("withExamples")
    void every_field_that_is_missing_unknown_of_another_type_or_outside_its_range_is_named(
            Calculation<?, ?> calculation) throws Exception {
        JsonNode good = DeclarationJson.example(
                        calculation, calculation.workedExamples().get(0))
                .inputs();
        assertRefused(calculation, with(good, "colour", "\"red\""), 400, "malformed-body", "colour");
        for (Field field : calculation.inputs()) {
            String name = field.name();
            if (!field.optional()) {
                ObjectNode without = ((ObjectNode) good).deepCopy();
                without.remove(name);
                assertRefused(calculation, without.toString(), 400, "malformed-body", name);
                assertRefused(calculation, with(good, name, "null"), 400, "malformed-body", name);
            }
            boolean number = field.kind() == Field.Kind.NUMBER || field.kind() == Field.Kind.INTEGER;
            assertRefused(calculation, with(good, name, number ? "\"12\"" : "12.5"), 400, "malformed-body", name);
            if (number) {
                assertRefused(calculation, with(good, name, "\"NaN\""), 400, "malformed-body", name);
                for (Double limit : new Double[] {field.min(), field.max()}) {
                    if (limit != null) {
                        double beyond = limit + Math.signum(limit.equals(field.min()) ? -1 : 1) * (1 + Math.abs(limit));
                        String value = field.kind() == Field.Kind.INTEGER
                                ? Long.toString((long) beyond)
                                : Double.toString(beyond);
                        assertRefused(calculation, with(good, name, value), 422, "outside-limits", name);
                    }
                }
            }
        }
    }

    @Test
    void an_unknown_calculation_is_not_found_and_nothing_is_computed_for_nobody() throws Exception {
        assertThat(send("no-such-calculation", "{}").getStatus()).isEqualTo(404);
        assertThat(http.perform(get("/api/v1/calculations"))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(401);
    }

    private void assertRefused(Calculation<?, ?> calculation, String body, int status, String code, String field)
            throws Exception {
        MockHttpServletResponse answer = send(calculation.id(), body);
        String text = answer.getContentAsString(UTF_8);
        assertThat(answer.getStatus())
                .as("%s of %s: %s", field, calculation, text)
                .isEqualTo(status);
        JsonNode problem = JSON.readTree(text);
        assertThat(problem.get("code").asString()).as(text).isEqualTo(code);
        List<String> named = status == 400
                ? List.of(problem.get("field").asString())
                : problem.get("errors")
                        .valueStream()
                        .map(e -> e.get("field").asString())
                        .toList();
        assertThat(named).as(text).contains(field);
        assertThat(text).doesNotContain("oakum.", "java.", "Exception");
    }

    private static String with(JsonNode good, String name, String value) {
        ObjectNode changed = ((ObjectNode) good).deepCopy();
        changed.set(name, JSON.readTree(value));
        return changed.toString();
    }

    private static JsonNode reread(Record record) {
        return JSON.readTree(RecordJson.of(record).toString());
    }

    private MockHttpServletResponse send(String id, String body) throws Exception {
        return answer(post("/api/v1/calculations/" + id)
                .contentType(MediaType.APPLICATION_JSON)
                .content(body));
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request) throws Exception {
        return http.perform(request.with(SignedIn.as(Role.CONSULTANT)))
                .andReturn()
                .getResponse();
    }
}
