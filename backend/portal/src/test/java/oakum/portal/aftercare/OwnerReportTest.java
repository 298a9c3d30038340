package oakum.portal.aftercare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import javax.imageio.ImageIO;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** An owner tells what was seen, takes one of the offered times, and the office answers once. */
@PortalTest
class OwnerReportTest {
    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    Care care;

    @Autowired
    Visits visits;

    @Autowired
    Clock clock;

    private String house;
    private LocalDate today;

    @BeforeEach
    void a_house_in_care() {
        house = HouseFixtures.house(houses);
        AsPortal.run(() -> {
            care.place(new Care.Place("reach of " + house, DayOfWeek.WEDNESDAY));
            care.take(new Care.HouseInCare(house, "reach of " + house, null));
            today = LocalDate.now(clock.withZone(ZoneId.of(houses.find(house).timeZone())));
        });
    }

    @Test
    void two_days_are_offered_and_a_visit_planned_at_the_house_is_one_of_them() throws Exception {
        AsPortal.run(() -> visits.add(
                new Visits.NewVisit(house, VisitKind.MONTHS_11, today.plusDays(9), today.plusDays(9), List.of())));
        JsonNode offered = slots();
        assertThat(offered.get("slots")
                        .valueStream()
                        .map(s -> s.get("day").asString())
                        .distinct())
                .hasSize(2)
                .contains(today.plusDays(9).toString());
        assertThat(offered.get("slots").size()).isEqualTo(4);
        assertThat(offered.at("/cautions/0/subject").asString()).isEqualTo("Danger first");
        assertThat(offered.at("/actions/0").asString()).isEqualTo("report");
    }

    @Test
    void a_report_with_a_photo_and_an_offered_time_waits_until_the_office_answers_and_plans_a_visit() throws Exception {
        UUID photo = photo();
        JsonNode slot = slots().at("/slots/1");
        String day = slot.get("day").asString();
        JsonNode sent = json(send("""
                        {"what":"Water under the tank","inHouse":"mechanical room","photos":["%s"],
                         "slot":{"day":"%s","half":"AFTERNOON"},"preference":"please ring first"}
                        """.formatted(photo, day))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.level").value("ANSWER"))
                .andExpect(jsonPath("$.overdue").value(false))
                .andExpect(jsonPath("$.photos[0]").value(photo.toString()))
                .andExpect(jsonPath("$.slot.day").value(day))
                .andExpect(jsonPath("$.actions").isEmpty()));
        http.perform(get("/api/v1/reports?waiting=true").with(SignedIn.as(Role.OFFICE_MANAGER)))
                .andExpect(jsonPath("$.items[?(@.house=='" + house + "')].actions[0]")
                        .value("answer-report"));
        ResultActions answered = answer(sent, "{\"text\":\"We come and look.\",\"visitOn\":\"" + day + "\"}")
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.level").value("NOTE"))
                .andExpect(jsonPath("$.answer").value("We come and look."));
        http.perform(get("/api/v1/visits/{id}", json(answered).get("visit").asString())
                        .with(SignedIn.as(Role.OFFICE_MANAGER)))
                .andExpect(jsonPath("$.plannedOn").value(day))
                .andExpect(jsonPath("$.kind").value("report"));
        answer(sent, "{\"text\":\"Twice.\",\"visitOn\":null}")
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("report-answered"));
    }

    @Test
    void the_same_key_sent_again_reports_once() throws Exception {
        String key = UUID.randomUUID().toString();
        for (int i = 0; i < 2; i++) {
            http.perform(post("/api/v1/houses/{h}/reports", house)
                            .contentType(MediaType.APPLICATION_JSON)
                            .content(
                                    "{\"what\":\"A gap\",\"inHouse\":null,\"photos\":null,\"slot\":null,\"preference\":null}")
                            .header("Idempotency-Key", key)
                            .with(SignedIn.as(Role.OWNER, house)))
                    .andExpect(status().isCreated());
        }
        http.perform(get("/api/v1/houses/{h}/reports", house).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(jsonPath("$.items.length()").value(1))
                .andExpect(jsonPath("$.next").doesNotExist());
    }

    @Test
    void a_time_that_is_not_offered_and_a_photo_that_is_not_there_are_refused_and_nothing_is_kept() throws Exception {
        send("""
                {"what":"A gap","inHouse":null,"photos":null,"slot":{"day":"%s","half":"MORNING"},"preference":null}
                """.formatted(today.minusDays(1)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("slot-not-offered"));
        send("""
                {"what":"A gap","inHouse":null,"photos":["%s"],"slot":null,"preference":null}
                """.formatted(UUID.randomUUID()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("unknown-photo"));
        send("{\"what\":\" \",\"inHouse\":null,\"photos\":null,\"slot\":null,\"preference\":null}")
                .andExpect(status().isUnprocessableContent());
        http.perform(get("/api/v1/houses/{h}/reports", house).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(jsonPath("$.items").isEmpty());
    }

    @Test
    void reports_page_by_cursor_and_a_foreign_cursor_is_refused() throws Exception {
        for (int i = 0; i < 51; i++) {
            send("{\"what\":\"No. " + i + "\",\"inHouse\":null,\"photos\":null,\"slot\":null,\"preference\":null}");
        }
        JsonNode first =
                json(http.perform(get("/api/v1/houses/{h}/reports", house).with(SignedIn.as(Role.OWNER, house))));
        assertThat(first.get("items").size()).isEqualTo(50);
        assertThat(first.at("/items/0/what").asString()).isEqualTo("No. 50");
        JsonNode second = json(http.perform(get("/api/v1/houses/{h}/reports", house)
                .param("cursor", first.get("next").asString())
                .with(SignedIn.as(Role.OWNER, house))));
        assertThat(second.get("items").size()).isEqualTo(1);
        assertThat(second.at("/items/0/what").asString()).isEqualTo("No. 0");
        http.perform(get("/api/v1/houses/{h}/reports", house)
                        .param("cursor", "eAp5")
                        .with(SignedIn.as(Role.OWNER, house)))
                .andExpect(status().isBadRequest())
                .andExpect(jsonPath("$.code").value("parameter-malformed"));
    }

    private JsonNode slots() throws Exception {
        return json(http.perform(get("/api/v1/houses/{h}/reports/slots", house).with(SignedIn.as(Role.OWNER, house))));
    }

    private ResultActions send(String body) throws Exception {
        return http.perform(post("/api/v1/houses/{h}/reports", house)
                .contentType(MediaType.APPLICATION_JSON)
                .content(body)
                .with(SignedIn.as(Role.OWNER, house)));
    }

    private ResultActions answer(JsonNode report, String body) throws Exception {
        return http.perform(post(
                        "/api/v1/houses/{h}/reports/{id}/answer",
                        house,
                        report.get("id").asString())
                .contentType(MediaType.APPLICATION_JSON)
                .content(body)
                .with(SignedIn.as(Role.OFFICE_MANAGER)));
    }

    private UUID photo() throws Exception {
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "jpg", jpeg);
        UUID id = UUID.randomUUID();
        http.perform(multipart("/api/v1/houses/{h}/photos", house)
                        .file(new MockMultipartFile("file", "x.jpg", "image/jpeg", jpeg.toByteArray()))
                        .param("clientId", id.toString())
                        .with(SignedIn.as(Role.OWNER, house)))
                .andExpect(status().isCreated());
        return id;
    }

    private static JsonNode json(ResultActions answer) throws Exception {
        return JsonMapper.shared()
                .readTree(answer.andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8));
    }
}
