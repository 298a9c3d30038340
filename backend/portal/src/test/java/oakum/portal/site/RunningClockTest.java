package oakum.portal.site;

import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@PortalTest
class RunningClockTest {
    private static final ZoneId ZONE = ZoneId.of("Pacific/Kiritimati");

    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    String clocks;
    LocalDate today;

    @BeforeEach
    void membrane_unrolled_59_days_ago() throws Exception {
        // fourteen hours ahead of UTC: its day is mostly another one than the server's
        clocks = "/api/v1/houses/" + HouseFixtures.house(houses, ZONE.getId()) + "/clocks";
        today = LocalDate.ofInstant(Instant.now(), ZONE);
        send(post(clocks), Role.SITE_LEAD, """
                        {"id":"membrane-south","label":"Outer membrane, south face","startedOn":"%s","limitDays":90,
                         "limitSource":"data sheet","plannedOn":"%s"}
                        """.formatted(today.minusDays(59), today.plusDays(25)))
                .andExpect(status().isCreated())
                .andExpect(header().string("ETag", "\"1\""));
    }

    @Test
    void days_are_those_of_the_house() throws Exception {
        http.perform(get(clocks + "/membrane-south").with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$.today").value(today.toString()))
                .andExpect(jsonPath("$.daysUsed").value(59))
                .andExpect(jsonPath("$.plannedDay").value(84))
                .andExpect(jsonPath("$.daysToSpare").value(6))
                .andExpect(jsonPath("$.state").value("SHORT"));
    }

    @Test
    void a_trial_of_one_week_later_is_over_by_one_and_saves_nothing() throws Exception {
        send(post(clocks + "/membrane-south/trial"), Role.DESIGNER, planned(today.plusDays(32)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.saved.daysToSpare").value(6))
                .andExpect(jsonPath("$.trial.daysOver").value(1))
                .andExpect(jsonPath("$.trial.state").value("OVER"));
        http.perform(get(clocks).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$[0].daysToSpare").value(6))
                .andExpect(jsonPath("$[0].version").value(1));
    }

    @Test
    void another_day_is_saved_only_from_what_was_read() throws Exception {
        String slipped = planned(today.plusDays(32));
        send(put(clocks + "/membrane-south"), Role.SITE_LEAD, slipped).andExpect(status().isPreconditionRequired());
        send(put(clocks + "/membrane-south").header("If-Match", "\"7\""), Role.SITE_LEAD, slipped)
                .andExpect(status().isPreconditionFailed());
        send(put(clocks + "/membrane-south").header("If-Match", "\"1\""), Role.DESIGNER, slipped)
                .andExpect(status().isForbidden());
        send(put(clocks + "/membrane-south").header("If-Match", "\"1\""), Role.SITE_LEAD, slipped)
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"2\""))
                .andExpect(jsonPath("$.daysOver").value(1));
    }

    @Test
    void what_is_covered_runs_no_longer() throws Exception {
        send(
                        put(clocks + "/membrane-south").header("If-Match", "\"1\""),
                        Role.SITE_LEAD,
                        "{\"stoppedOn\":\"" + today.plusDays(1) + "\"}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("dates-out-of-order"));
        send(
                        put(clocks + "/membrane-south").header("If-Match", "\"1\""),
                        Role.SITE_LEAD,
                        "{\"stoppedOn\":\"" + today + "\"}")
                .andExpect(jsonPath("$.state").value("COVERED"))
                .andExpect(jsonPath("$.actions", not(hasItem("change-clock"))));
    }

    @Test
    void a_limit_of_no_days_is_refused() throws Exception {
        send(
                        post(clocks),
                        Role.SITE_LEAD,
                        "{\"id\":\"x\",\"label\":\"x\",\"startedOn\":\"%s\",\"limitDays\":0,\"limitSource\":\"x\"}"
                                .formatted(today))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].field").value("limitDays"));
    }

    private static String planned(LocalDate day) {
        return "{\"plannedOn\":\"" + day + "\"}";
    }

    private ResultActions send(MockHttpServletRequestBuilder request, Role role, String body) throws Exception {
        return http.perform(
                request.contentType(MediaType.APPLICATION_JSON).content(body).with(SignedIn.as(role)));
    }
}
