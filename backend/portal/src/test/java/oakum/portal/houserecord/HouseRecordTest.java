package oakum.portal.houserecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.http.MediaType.APPLICATION_JSON;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.Map;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.json.JsonMapper;

@PortalTest
class HouseRecordTest {
    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    HouseRecord record;

    @Autowired
    JsonMapper json;

    @Autowired
    JdbcClient jdbc;

    String house;

    @BeforeEach
    void open_a_house() {
        house = HouseFixtures.house(houses);
    }

    private String air(double hood, String reason) {
        return json.writeValueAsString(Map.of("document", HouseFixtures.air(hood), "reason", reason));
    }

    @Test
    void a_designer_opens_a_house_and_everybody_of_the_firm_sees_it() throws Exception {
        http.perform(post("/api/v1/houses")
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"id\": \"" + house + "-B\", \"house\": " + HouseFixtures.MEASURES + "}"))
                .andExpect(status().isCreated())
                .andExpect(header().exists("ETag"));
        http.perform(get("/api/v1/houses/{h}", house + "-B").with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.altitudeM").value(2350))
                .andExpect(jsonPath("$.actions").isEmpty());
    }

    @Test
    void a_code_in_another_form_or_taken_is_refused() throws Exception {
        for (String code : new String[] {"h1", "1H", "H 1", "H1234567890123456"}) {
            http.perform(post("/api/v1/houses")
                            .with(SignedIn.as(Role.DESIGNER))
                            .contentType(APPLICATION_JSON)
                            .content("{\"id\": \"" + code + "\", \"house\": " + HouseFixtures.MEASURES + "}"))
                    .andExpect(status().isUnprocessableContent())
                    .andExpect(jsonPath("$.code").value("house-code"));
        }
        http.perform(post("/api/v1/houses")
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"id\": \"" + house + "\", \"house\": " + HouseFixtures.MEASURES + "}"))
                .andExpect(status().isConflict());
    }

    @Test
    void a_house_of_others_does_not_exist_for_an_owner() throws Exception {
        String other = HouseFixtures.house(houses);
        http.perform(get("/api/v1/houses/{h}", house).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(status().isOk());
        for (String path : new String[] {"", "/parts/air", "/parts/air/revisions"}) {
            http.perform(get("/api/v1/houses/" + other + path).with(SignedIn.as(Role.OWNER, house)))
                    .andExpect(status().isNotFound());
            http.perform(get("/api/v1/houses/" + other + path).with(SignedIn.as(Role.CONSULTANT, house)))
                    .andExpect(status().isNotFound());
        }
        http.perform(get("/api/v1/houses").with(SignedIn.as(Role.OWNER, house)))
                .andExpect(jsonPath("$.items.length()").value(1));
    }

    @Test
    void a_page_ends_where_the_next_begins() throws Exception {
        String other = HouseFixtures.house(houses);
        http.perform(get("/api/v1/houses?limit=1").with(SignedIn.as(Role.CONSULTANT, house, other)))
                .andExpect(jsonPath("$.items[0].id").value(house))
                .andExpect(jsonPath("$.next").value(house));
        http.perform(get("/api/v1/houses?limit=1&cursor=" + house).with(SignedIn.as(Role.CONSULTANT, house, other)))
                .andExpect(jsonPath("$.items[0].id").value(other))
                .andExpect(jsonPath("$.next").doesNotExist());
    }

    @Test
    void of_two_people_who_save_one_part_the_second_is_refused_and_told() throws Exception {
        http.perform(put("/api/v1/houses/{h}/parts/air", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(air(0.1888, "first")))
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"1\""));
        http.perform(put("/api/v1/houses/{h}/parts/air", house)
                        .with(SignedIn.as(Role.PRINCIPAL))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(air(0.2832, "second")))
                .andExpect(status().isPreconditionFailed())
                .andExpect(jsonPath("$.code").value("changed-meanwhile"));
        http.perform(put("/api/v1/houses/{h}/parts/air", house)
                        .with(SignedIn.as(Role.PRINCIPAL))
                        .contentType(APPLICATION_JSON)
                        .content(air(0.2832, "second")))
                .andExpect(status().isPreconditionRequired());
        http.perform(get("/api/v1/houses/{h}/parts/air", house).with(SignedIn.as(Role.DESIGNER)))
                .andExpect(jsonPath("$.revision").value(1))
                .andExpect(jsonPath("$.document.exhaust[0].ratedFlowM3PerS").value(0.1888))
                .andExpect(jsonPath("$.reason").value("first"))
                .andExpect(jsonPath("$.madeBy").value("designer"));
    }

    @Test
    void a_house_is_changed_from_the_version_that_was_read() throws Exception {
        String body = "{\"reason\": \"surveyed\", \"house\": " + HouseFixtures.MEASURES.replace("2350", "2400") + "}";
        http.perform(put("/api/v1/houses/{h}", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"1\""))
                .andExpect(jsonPath("$.altitudeM").value(2400));
        http.perform(put("/api/v1/houses/{h}", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().isPreconditionFailed());
        http.perform(get("/api/v1/houses/{h}/parts/house/differences?from=1&to=2", house)
                        .with(SignedIn.as(Role.DESIGNER)))
                .andExpect(jsonPath("$.length()").value(1))
                .andExpect(jsonPath("$[0].path").value("house.altitudeM"))
                .andExpect(jsonPath("$[0].label").value("Altitude"))
                .andExpect(jsonPath("$[0].unit.id").value("METRE"))
                .andExpect(jsonPath("$[0].old").value("2350"))
                .andExpect(jsonPath("$[0].new").value("2400"));
    }

    @Test
    void bad_input_names_the_field_and_nothing_is_saved() throws Exception {
        String good = air(0.1888, "first");
        refused(good.replace("\"ratedFlowM3PerS\":0.1888", "\"ratedFlowM3PerS\":\"0.1888\""), 400, "malformed-body")
                .andExpect(jsonPath("$.field").value("air.exhaust[0].ratedFlowM3PerS"));
        refused(good.replace("\"ratedFlowM3PerS\":0.1888,", ""), 400, "malformed-body")
                .andExpect(jsonPath("$.field").value("air.exhaust[0].ratedFlowM3PerS"));
        refused(good.replace("\"continuous\":false", "\"continuous\":false,\"colour\":1"), 400, "malformed-body")
                .andExpect(jsonPath("$.field").value("air.exhaust[0].colour"));
        refused(good.replace("\"RANGE_HOOD\"", "\"HOOD\""), 400, "malformed-body")
                .andExpect(jsonPath("$.field").value("air.exhaust[0].kind"));
        refused(good.replace("\"ratedFlowM3PerS\":0.1888", "\"ratedFlowM3PerS\":18.88"), 422, "outside-limits")
                .andExpect(jsonPath("$.errors[0].field").value("air.exhaust[0].ratedFlowM3PerS"))
                .andExpect(jsonPath("$.errors[0].max").value(2))
                .andExpect(jsonPath("$.errors[0].unit").value("m3/s"));
        refused(good.replace("\"reason\":\"first\"", "\"reason\":\" \""), 422, "reason-missing");
        http.perform(get("/api/v1/houses/{h}/parts/air", house).with(SignedIn.as(Role.DESIGNER)))
                .andExpect(jsonPath("$.revision").value(0));
    }

    private org.springframework.test.web.servlet.ResultActions refused(String body, int status, String code)
            throws Exception {
        return http.perform(put("/api/v1/houses/{h}/parts/air", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().is(status))
                .andExpect(jsonPath("$.code").value(code));
    }

    @Test
    void who_may_not_change_the_record_is_refused() throws Exception {
        http.perform(put("/api/v1/houses/{h}/parts/air", house)
                        .with(SignedIn.as(Role.SITE_LEAD))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(air(0.1888, "first")))
                .andExpect(status().isForbidden());
    }

    @Test
    void every_value_has_a_path_with_label_unit_and_limits() {
        AsPortal.run(() -> {
            record.save(house, PartKind.AIR, HouseFixtures.air(0.1888), "first");
            Snapshot snapshot = record.snapshot(house);
            assertThat(snapshot.values())
                    .containsEntry("air.exhaust[rangeHood].ratedFlowM3PerS", "0.1888")
                    .containsEntry("house.altitudeM", "2350");
            PathInfo info = record.describe(snapshot, "air.exhaust[rangeHood].ratedFlowM3PerS");
            assertThat(info.label()).isEqualTo("Range hood: Rated flow");
            assertThat(info.field().max()).isEqualTo(2);
            snapshot.values()
                    .keySet()
                    .forEach(path -> assertThat(record.describe(snapshot, path).field())
                            .as(path)
                            .isNotNull());
        });
    }

    @Test
    void the_database_itself_refuses_to_rewrite_a_revision() {
        assertThatThrownBy(() -> jdbc.sql("update houserecord.part_revision set reason = 'other' where house_id = ?")
                        .params(house)
                        .update())
                .hasMessageContaining("append-only");
    }

    @Test
    void a_part_type_tells_its_fields() throws Exception {
        http.perform(get("/api/v1/part-types/air").with(SignedIn.as(Role.DESIGNER)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.fields[?(@.name=='exhaust')].fields[?(@.name=='ratedFlowM3PerS')].unit.id")
                        .value("CUBIC_METRE_PER_SECOND"));
    }
}
