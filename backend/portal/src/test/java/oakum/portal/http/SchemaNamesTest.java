package oakum.portal.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import oakum.portal.PortalTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@PortalTest
class SchemaNamesTest {
    @Autowired
    MockMvc http;

    @Autowired
    NeededInSchema schemas;

    @Test
    void no_two_records_share_a_schema() throws Exception {
        http.perform(get("/api/v1/openapi")).andExpect(status().isOk());
        assertThat(schemas.collisions())
                .as("give one of them another name, or @Schema(name = …)")
                .isEmpty();
    }
}
