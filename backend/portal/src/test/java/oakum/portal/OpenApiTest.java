package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** The interface as a document; the client's types are made from the committed copy. */
@PortalTest
class OpenApiTest {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    @Autowired
    MockMvc http;

    @Test
    void the_committed_document_is_what_the_portal_serves() throws Exception {
        WrittenByTest.agrees(
                WrittenByTest.DOCS.resolve("reference/openapi.json"), JSON.writeValueAsString(document()) + "\n");
    }

    @Test
    void operations_have_names_of_their_own_and_say_how_they_refuse() throws Exception {
        JsonNode document = document();
        assertThat(document.get("openapi").asString()).startsWith("3.1");
        Set<String> names = new HashSet<>();
        document.get("paths")
                .forEachEntry((path, methods) -> methods.forEachEntry((method, operation) -> {
                    if (operation.isObject() && operation.has("operationId")) {
                        String name = operation.get("operationId").asString();
                        assertThat(names.add(name))
                                .as("%s %s: %s", method, path, name)
                                .isTrue();
                        assertThat(operation
                                        .at("/responses/default/content/application~1problem+json/schema/$ref")
                                        .asString())
                                .as(name)
                                .endsWith("/Problem");
                    }
                }));
        assertThat(names).isNotEmpty();
    }

    private JsonNode document() throws Exception {
        return JSON.readTree(http.perform(get("/api/v1/openapi"))
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8));
    }
}
