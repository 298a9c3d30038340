package oakum.portal.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import com.jayway.jsonpath.JsonPath;
import jakarta.servlet.ServletContext;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** Bad input gets a whole sentence that names the field; never a stack trace, a class name or a 500. */
@PortalTest
class BadInputTest {
    private static final String GOOD = """
            {"label": "hood", "flowM3PerS": 0.19, "count": 1, "continuous": false, "kind": "FAN",
             "on": "2026-05-14", "rows": [{"id": "a", "flowM3PerS": 1}]}""";

    @Autowired
    MockMvc http;

    @Test
    void what_is_right_is_taken_and_optional_fields_may_be_absent() throws Exception {
        MockHttpServletResponse answer = send(GOOD);
        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(JsonPath.<Double>read(answer.getContentAsString(), "$.flowM3PerS"))
                .isEqualTo(0.19);
    }

    @ParameterizedTest(name = "{0} instead of {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "'label': 'hood', 'colour': 'red' | 'label': 'hood' | colour | There is no field colour. Known here: label,",
                "'label': 5 | 'label': 'hood' | label | label must be text",
                "'label': null | 'label': 'hood' | label | label must not be null.",
                "'label': 'a\\u0000b' | 'label': 'hood' | label | is not text without the character 0.",
                "'flowM3PerS': '0.19' | 'flowM3PerS': 0.19 | flowM3PerS | flowM3PerS must be a number, not text.",
                "'flowM3PerS': 'NaN' | 'flowM3PerS': 0.19 | flowM3PerS | flowM3PerS must be a number, not text.",
                "'flowM3PerS': '' | 'flowM3PerS': 0.19 | flowM3PerS | flowM3PerS must be a number, not text.",
                "'flowM3PerS': NaN | 'flowM3PerS': 0.19 | - | The body is not JSON: line 1, column",
                "'flowM3PerS': Infinity | 'flowM3PerS': 0.19 | - | The body is not JSON: line 1, column",
                "'flowM3PerS': 1e999 | 'flowM3PerS': 0.19 | flowM3PerS | is not a number.",
                "'flowM3PerS': null | 'flowM3PerS': 0.19 | flowM3PerS | flowM3PerS must not be null.",
                "'flowM3PerS': true | 'flowM3PerS': 0.19 | flowM3PerS | must be a number, not true or false.",
                "'flowM3PerS': 1, 'flowM3PerS': 2 | 'flowM3PerS': 0.19 | - | The body is not JSON",
                "'count': 3.7 | 'count': 1 | count | count = 3.7 is not a whole number.",
                "'count': '3' | 'count': 1 | count | count must be a whole number, not text.",
                "'count': 99999999999 | 'count': 1 | count | it must be a whole number.",
                "'count': null | 'count': 1 | count | count must not be null.",
                "'continuous': 'true' | 'continuous': false | continuous | continuous must be true or false, not text.",
                "'continuous': 1 | 'continuous': false | continuous | continuous = 1 is not true or false.",
                "'kind': 'WINDOW' | 'kind': 'FAN' | kind | kind = \"WINDOW\" is not one of FAN, DOOR.",
                "'kind': 'fan' | 'kind': 'FAN' | kind | is not one of FAN, DOOR.",
                "'kind': 0 | 'kind': 'FAN' | kind | one of FAN, DOOR",
                "'on': '14 May' | 'on': '2026-05-14' | on | is not a date such as 2026-05-14.",
                "'rows': {} | 'rows': [{'id': 'a', 'flowM3PerS': 1}] | rows | rows must be a list, not an object.",
                "'rows': [null] | 'rows': [{'id': 'a', 'flowM3PerS': 1}] | rows[0] | must not be null.",
                "'rows': [{'id': 'a'}] | 'rows': [{'id': 'a', 'flowM3PerS': 1}] | rows[0].flowM3PerS | is missing.",
                "'rows': [{'id': 'a', 'flowM3PerS': 'x'}] | 'rows': [{'id': 'a', 'flowM3PerS': 1}] | rows[0].flowM3PerS"
                        + " | must be a number, not text.",
                "'personId': 'x', 'kind': 'FAN' | 'kind': 'FAN' | personId | personId = \"x\" is not an id.",
            })
    void a_body_that_is_not_right_is_refused_naming_the_field(String wrong, String right, String field, String sentence)
            throws Exception {
        String body = GOOD.replace(right.replace('\'', '"'), wrong.replace('\'', '"'));
        assertThat(body).isNotEqualTo(GOOD);
        MockHttpServletResponse answer = send(body);
        assertProblem(answer, 400, "malformed-body");
        assertThat(JsonPath.<String>read(answer.getContentAsString(), "$.detail"))
                .contains(sentence);
        if (!field.equals("-")) {
            assertThat(JsonPath.<String>read(answer.getContentAsString(), "$.field"))
                    .isEqualTo(field);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {"\"label\": \"hood\", |label", "\"count\": 1, |count", "\"continuous\": false, |continuous"})
    void a_missing_field_is_named(String dropped, String field) throws Exception {
        MockHttpServletResponse answer = send(GOOD.replace(dropped, ""));
        assertProblem(answer, 400, "malformed-body");
        assertThat(JsonPath.<String>read(answer.getContentAsString(), "$.detail"))
                .isEqualTo(field + " is missing.");
    }

    @Test
    void what_is_no_json_is_refused() throws Exception {
        for (String body : new String[] {"", "{", "[1", "null", "\"text\"", "{} {}", "{'label': 1}", GOOD + "x"}) {
            assertProblem(send(body), 400, "malformed-body");
        }
        assertProblem(send("[".repeat(2000)), 400, "malformed-body");
    }

    @Test
    void a_body_over_its_limit_is_refused_whether_or_not_it_says_its_length() throws Exception {
        String large = GOOD.replace("hood", "h".repeat((int) JsonBodies.LIMIT_BYTES));
        assertProblem(send(large), 413, "body-too-large");
        MockHttpServletResponse chunked = http.perform(
                        context -> SignedIn.as(Role.DESIGNER).postProcessRequest(ofUnknownLength(context, large)))
                .andReturn()
                .getResponse();
        assertProblem(chunked, 413, "body-too-large");
    }

    @Test
    void wrong_methods_paths_and_media_types_have_their_own_codes() throws Exception {
        MockHttpServletResponse method = answer(delete("/api/v1/for-tests/bodies"));
        assertProblem(method, 405, "method-not-allowed");
        assertThat(method.getHeader("Allow")).isEqualTo("POST");
        assertProblem(answer(get("/api/v1/no-such-thing")), 404, "not-found");
        assertProblem(
                answer(post("/api/v1/for-tests/bodies")
                        .contentType(MediaType.TEXT_PLAIN)
                        .content("x")),
                415,
                "media-type-not-supported");
        assertProblem(answer(get("/api/v1/for-tests/failures")), 400, "parameter-missing");
        assertProblem(answer(get("/api/v1/for-tests/failures?kind=x&number=two")), 400, "parameter-malformed");
    }

    @ParameterizedTest
    @CsvSource({
        "refused, 422, outside-limits",
        "locking, 412, changed-meanwhile",
        "unique, 409, already-there",
        "reference, 409, reference-missing",
        "check, 422, outside-limits",
        "away, 503, database-away",
        "statement, 500, unexpected",
        "anything, 500, unexpected"
    })
    void what_goes_wrong_inside_tells_nothing_of_the_inside(String kind, int status, String code) throws Exception {
        MockHttpServletResponse answer =
                answer(get("/api/v1/for-tests/failures").param("kind", kind));
        assertProblem(answer, status, code);
        if (status == 503) {
            assertThat(answer.getHeader("Retry-After")).isEqualTo("5");
        }
    }

    @Test
    void a_broken_limit_names_field_value_range_unit_and_source() throws Exception {
        String body = answer(get("/api/v1/for-tests/failures").param("kind", "refused"))
                .getContentAsString();
        assertThat(JsonPath.<String>read(body, "$.errors[0].field")).isEqualTo("rows[0].flowM3PerS");
        assertThat(JsonPath.<String>read(body, "$.errors[0].value")).isEqualTo("3");
        assertThat(JsonPath.<Double>read(body, "$.errors[0].max")).isEqualTo(2.0);
        assertThat(JsonPath.<String>read(body, "$.errors[0].unit")).isEqualTo("m3/s");
        assertThat(JsonPath.<String>read(body, "$.errors[0].source")).isEqualTo("a standard");
        assertThat(JsonPath.<String>read(body, "$.errors[0].detail")).isEqualTo("Too much.");
    }

    private static MockHttpServletRequest ofUnknownLength(ServletContext context, String body) {
        MockHttpServletRequest request = new MockHttpServletRequest(context, "POST", "/api/v1/for-tests/bodies") {
            @Override
            public long getContentLengthLong() {
                return -1;
            }
        };
        request.setContentType(MediaType.APPLICATION_JSON_VALUE);
        request.setContent(body.getBytes(UTF_8));
        return request;
    }

    private MockHttpServletResponse send(String body) throws Exception {
        return answer(post("/api/v1/for-tests/bodies")
                .contentType(MediaType.APPLICATION_JSON)
                .content(body));
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request) throws Exception {
        return http.perform(request.with(SignedIn.as(Role.DESIGNER)))
                .andReturn()
                .getResponse();
    }

    private static void assertProblem(MockHttpServletResponse answer, int status, String code) throws Exception {
        String body = answer.getContentAsString();
        assertThat(answer.getStatus()).as(body).isEqualTo(status);
        assertThat(answer.getContentType()).startsWith("application/problem+json");
        assertThat(JsonPath.<String>read(body, "$.code")).isEqualTo(code);
        assertThat(JsonPath.<Integer>read(body, "$.status")).isEqualTo(status);
        assertThat(JsonPath.<String>read(body, "$.detail")).isNotBlank();
        assertThat(body).doesNotContain("oakum", "java.", "jackson", "Exception", "springframework", "SQL", "secret");
    }
}
