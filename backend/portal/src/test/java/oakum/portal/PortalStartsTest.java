package oakum.portal;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@PortalTest
class PortalStartsTest {
    @Autowired
    MockMvc http;

    @Test
    void and_says_that_it_is_well() throws Exception {
        http.perform(get("/actuator/health")).andExpect(status().isOk());
    }
}
