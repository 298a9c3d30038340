package oakum.portal.reading;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPOutputStream;
import oakum.portal.SignedIn;
import oakum.portal.people.Role;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What tests of readings send and ask. */
final class Deliveries {
    private Deliveries() {}

    static void sensor(MockMvc http, String house, String key, ObservedProperty property) throws Exception {
        http.perform(post("/api/v1/houses/" + house + "/sensors")
                        .with(SignedIn.as(Role.OFFICE_MANAGER))
                        .contentType("application/json")
                        .content("{\"key\":\"" + key + "\",\"label\":\"" + key + "\",\"property\":\"" + property.id()
                                + "\"}"))
                .andExpect(result -> {
                    if (result.getResponse().getStatus() != 201) {
                        throw new AssertionError(result.getResponse().getContentAsString());
                    }
                });
    }

    static ResultActions send(MockMvc http, String house, String query, byte[] body) throws Exception {
        return http.perform(post(URI.create("/api/v1/houses/" + house + "/readings" + query))
                .with(SignedIn.as(Role.OFFICE_MANAGER))
                .contentType("text/csv")
                .content(body));
    }

    static ResultActions send(MockMvc http, String house, String query, String body) throws Exception {
        return send(http, house, query, body.getBytes(StandardCharsets.UTF_8));
    }

    static ResultActions series(MockMvc http, String house, String query) throws Exception {
        return http.perform(get(URI.create("/api/v1/houses/" + house + "/readings?" + query))
                .with(SignedIn.as(Role.OFFICE_MANAGER)));
    }

    static JsonNode json(ResultActions answer) throws Exception {
        return JsonMapper.shared()
                .readTree(answer.andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8));
    }

    static byte[] gzip(String text) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }
}
