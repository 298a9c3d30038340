package oakum.portal.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.jayway.jsonpath.JsonPath;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.decision.DecisionView;
import oakum.portal.decision.Decisions;
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
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@PortalTest
class CoverCheckTest {
    private static final String CORNER = "9-01-north-east-corner-high";
    private static final Instant EARLY = Instant.parse("2026-05-13T08:00:00Z");

    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    Decisions decisions;

    String house;

    @BeforeEach
    void house_with_cover_check_9() throws Exception {
        house = HouseFixtures.house(houses, "America/Chicago");
        make(Role.SITE_LEAD, "{\"code\":\"C9\"}").andExpect(status().isCreated());
    }

    @Test
    void stays_shut_because_of_one_wet_corner_and_opens_after_it_was_read_again() throws Exception {
        everythingRightBut(CORNER);
        String first = answer(CORNER, Role.SITE_LEAD, "RIGHT", 0.194, EARLY)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.state").value("STOPPED"))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(JsonPath.<List<String>>read(first, "$.rows[?(@.id=='" + CORNER + "')].counting.judged"))
                .containsExactly("NOT_RIGHT");

        sign(Role.PRINCIPAL)
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("cover-check-stopped"))
                .andExpect(jsonPath("$.rows", hasSize(1)))
                .andExpect(jsonPath("$.rows[0].row").value(CORNER))
                .andExpect(jsonPath("$.rows[0].reason").value("Wood moisture content is 19.4 %, the limit is 18.0 %."));

        answer(CORNER, Role.SITE_LEAD, "RIGHT", 0.168, EARLY.plusSeconds(432_000))
                .andExpect(jsonPath("$.state").value("TO_SIGN"));
        sign(Role.SITE_LEAD)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.state").value("TO_SIGN"))
                .andExpect(jsonPath("$.waitsFor").value("PRINCIPAL"));
        sign(Role.PRINCIPAL)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.state").value("SIGNED"))
                .andExpect(jsonPath("$.stateLabel").value("may be covered"));
    }

    @Test
    void a_wet_corner_makes_one_loose_end_with_owner_day_and_after_photo() throws Exception {
        answer(CORNER, Role.SITE_LEAD, "RIGHT", 0.194, EARLY);
        answer(CORNER, Role.SITE_LEAD, "RIGHT", 0.191, EARLY.plusSeconds(60));
        String ends = http.perform(get("/api/v1/houses/{h}/loose-ends", house).with(SignedIn.as(Role.DESIGNER)))
                .andExpect(jsonPath("$", hasSize(1)))
                .andExpect(jsonPath("$[0].ownerRole").value("SITE_LEAD"))
                .andExpect(jsonPath("$[0].title", containsString("19.4 %")))
                .andExpect(jsonPath("$[0].actions", hasSize(0)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        String closing = "/api/v1/houses/" + house + "/loose-ends/" + JsonPath.read(ends, "$[0].id") + "/closing";
        send(post(closing), Role.SITE_LEAD, "{\"reason\":\"Heater and fan for five days.\"}")
                .andExpect(status().isPreconditionRequired());
        send(
                        post(closing).header("If-Match", "\"1\""),
                        Role.SITE_LEAD,
                        "{\"reason\":\"Heater and fan for five days.\"}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("after-photo-missing"));
        send(
                        post(closing).header("If-Match", "\"1\""),
                        Role.SITE_LEAD,
                        "{\"reason\":\"Heater and fan for five days.\",\"asLeft\":\"16.8 %\",\"afterPhoto\":\""
                                + photo() + "\"}")
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.closed").value(true));
    }

    @Test
    void an_answer_that_is_sent_twice_is_there_once() throws Exception {
        String body = body(UUID.randomUUID(), "RIGHT", 0.172, EARLY, List.of());
        rowAnswer("9-01-north-high", Role.SITE_LEAD, body).andExpect(status().isOk());
        String after = rowAnswer("9-01-north-high", Role.SITE_LEAD, body)
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(answers(after, "9-01-north-high")).hasSize(1);
    }

    @Test
    void an_id_that_was_used_for_another_answer_is_refused() throws Exception {
        UUID id = UUID.randomUUID();
        rowAnswer("9-01-north-high", Role.SITE_LEAD, body(id, "RIGHT", 0.172, EARLY, List.of()));
        rowAnswer("9-01-north-high", Role.SITE_LEAD, body(id, "RIGHT", 0.16, EARLY, List.of()))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("client-id-reused"));
        rowAnswer("9-01-west-high", Role.SITE_LEAD, body(id, "RIGHT", 0.172, EARLY, List.of()))
                .andExpect(status().isConflict());
    }

    @Test
    void of_two_people_who_answer_one_row_both_are_kept_and_the_earlier_counts() throws Exception {
        answer("9-08", Role.SITE_LEAD, "RIGHT", null, EARLY.plusSeconds(600));
        // came later because that phone had no signal, but was given earlier
        String after = answer("9-08", Role.MECHANICAL_CONTRACTOR, "RIGHT", null, EARLY)
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(answers(after, "9-08")).hasSize(2);
        assertThat(JsonPath.<List<String>>read(after, "$.rows[?(@.id=='9-08')].counting.person"))
                .containsExactly("mechanical contractor");
    }

    @Test
    void two_people_who_disagree_stop_the_check_until_somebody_looks_once_more() throws Exception {
        everythingRightBut("9-08");
        String later = answer("9-08", Role.SITE_LEAD, "NOT_RIGHT", null, EARLY.plusSeconds(600))
                .andReturn()
                .getResponse()
                .getContentAsString();
        String other = JsonPath.<List<String>>read(later, "$.rows[?(@.id=='9-08')].counting.id")
                .get(0);
        answer("9-08", Role.MECHANICAL_CONTRACTOR, "RIGHT", null, EARLY)
                .andExpect(jsonPath("$.stops[0].reason").value("Two people answered differently; look once more."));
        sign(Role.PRINCIPAL).andExpect(status().isConflict());
        String again = body(UUID.randomUUID(), "RIGHT", null, EARLY.plusSeconds(900), List.of(photo()))
                .replace("\"photos\"", "\"repeatOf\":\"" + other + "\",\"photos\"");
        rowAnswer("9-08", Role.MECHANICAL_CONTRACTOR, again).andExpect(jsonPath("$.stops", hasSize(0)));
    }

    @Test
    void a_device_whose_clock_runs_ahead_gains_nothing() throws Exception {
        String after = answer("9-08", Role.SITE_LEAD, "RIGHT", null, Instant.parse("2099-01-01T00:00:00Z"))
                .andReturn()
                .getResponse()
                .getContentAsString();
        String at = JsonPath.<List<String>>read(after, "$.rows[?(@.id=='9-08')].counting.at")
                .get(0);
        assertThat(Instant.parse(at)).isBefore(Instant.parse("2099-01-01T00:00:00Z"));
    }

    @Test
    void a_row_with_a_number_is_not_right_without_it_and_a_mistyped_number_is_refused() throws Exception {
        answer("9-01-north-high", Role.SITE_LEAD, "RIGHT", null, EARLY)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("value-missing"));
        answer("9-01-north-high", Role.SITE_LEAD, "RIGHT", 17.2, EARLY)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("outside-limits"))
                .andExpect(jsonPath("$.errors[0].field").value("value"));
        answer("9-05", Role.SITE_LEAD, "RIGHT", 0.1, EARLY)
                .andExpect(jsonPath("$.code").value("value-not-asked"));
        answer("9-05", Role.SITE_LEAD, "NOT_HERE", null, EARLY)
                .andExpect(jsonPath("$.code").value("reason-missing"));
    }

    @Test
    void a_row_without_its_photos_stays_shut_until_the_principal_lets_it_pass() throws Exception {
        everythingRightBut("9-05");
        rowAnswer("9-05", Role.SITE_LEAD, body(UUID.randomUUID(), "RIGHT", null, EARLY, List.of(photo())))
                .andExpect(jsonPath("$.stops[0].reason", endsWith("only 1 here.")));
        acceptance("9-05", Role.SITE_LEAD).andExpect(status().isForbidden());
        acceptance("9-05", Role.PRINCIPAL).andExpect(jsonPath("$.stops", hasSize(0)));
        sign(Role.PRINCIPAL).andExpect(jsonPath("$.state").value("SIGNED"));
    }

    @Test
    void a_signature_no_longer_stands_once_a_row_says_something_else() throws Exception {
        everythingRightBut("none");
        sign(Role.PRINCIPAL).andExpect(jsonPath("$.state").value("SIGNED"));
        answer(CORNER, Role.SITE_LEAD, "RIGHT", 0.22, EARLY.plusSeconds(9000))
                .andExpect(jsonPath("$.state").value("STOPPED"))
                .andExpect(jsonPath("$.signatures[0].stands").value(false));
    }

    @Test
    void what_changed_since_it_was_read_is_not_signed() throws Exception {
        everythingRightBut("none");
        send(post(path() + "/signature"), Role.PRINCIPAL, "{\"copyCode\":\"000 000\"}")
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("not-what-stands"));
    }

    @Test
    void a_check_whose_approval_no_longer_stands_is_not_signed_and_says_which_and_why() throws Exception {
        everythingRightBut("none");
        DecisionView wall = AsPortal.call(() -> {
            DecisionView opened = decisions.open(house, "D05", null);
            return decisions.approve(house, "D05", opened.copyCode(), Role.PRINCIPAL);
        });
        http.perform(get(path()).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$.state").value("TO_SIGN"));
        AsPortal.run(() ->
                decisions.withdraw(house, "D05", wall.approvals().get(0).id(), "another insulation was delivered"));
        sign(Role.PRINCIPAL)
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("cover-check-stopped"))
                .andExpect(jsonPath("$.lapsed[0].decision").value("D05"))
                .andExpect(jsonPath("$.lapsed[0].because", containsString("another insulation was delivered")));
        http.perform(get("/api/v1/houses/{h}/cover-checks", house).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$.checks[0].state").value("STOPPED"));
    }

    @Test
    void a_row_repeats_at_a_further_place() throws Exception {
        send(post(path() + "/places"), Role.SITE_LEAD, "{\"templateRow\":\"9-01\",\"place\":\"Behind the stair\"}")
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.rows[*].id", hasItem("9-01-behind-the-stair")));
        send(post(path() + "/places"), Role.SITE_LEAD, "{\"templateRow\":\"9-01\",\"place\":\"behind the stair\"}")
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("row-exists"));
    }

    @Test
    void only_those_who_work_on_site_answer_and_sign() throws Exception {
        answer("9-08", Role.DESIGNER, "RIGHT", null, EARLY).andExpect(status().isForbidden());
        answer("9-08", Role.OWNER, "RIGHT", null, EARLY).andExpect(status().isNotFound());
        http.perform(get(path()).with(SignedIn.as(Role.OWNER))).andExpect(status().isNotFound());
        http.perform(get(path()).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.actions", hasSize(0)));
        http.perform(get(path()).with(SignedIn.as(Role.MECHANICAL_CONTRACTOR)))
                .andExpect(jsonPath("$.actions", hasItem("answer-row")))
                .andExpect(jsonPath("$.actions", not(hasItem("sign"))));
        sign(Role.MECHANICAL_CONTRACTOR).andExpect(status().isForbidden());
        http.perform(get(path())).andExpect(status().isUnauthorized());
    }

    @Test
    void the_list_says_what_the_house_has_and_what_it_may_still_get() throws Exception {
        http.perform(get("/api/v1/houses/{h}/cover-checks", house).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$.checks[*].code", contains("C9")))
                .andExpect(jsonPath("$.checks[0].number").value(9))
                .andExpect(jsonPath("$.checks[0].waitsFor").value("PRINCIPAL"))
                .andExpect(jsonPath("$.notYetMade[*].code", contains("C4", "C8", "C10", "C11")))
                .andExpect(jsonPath("$.actions", contains("make-cover-check")));
        make(Role.SITE_LEAD, "{\"code\":\"C9\"}").andExpect(status().isConflict());
        make(Role.SITE_LEAD, "{\"code\":\"C99\"}").andExpect(status().isUnprocessableContent());
    }

    @Test
    void a_file_that_is_no_picture_is_refused_and_nothing_is_kept() throws Exception {
        sendPhoto(UUID.randomUUID(), "<html>no</html>".getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("not-an-image"));
        http.perform(get("/api/v1/houses/{h}/photos", house).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$", hasSize(0)));
    }

    @Test
    void a_photo_is_served_without_its_place_and_can_run_nothing() throws Exception {
        UUID id = UUID.randomUUID();
        byte[] sent = Jpegs.withLocation(Jpegs.halves(640, 480), 1);
        sendPhoto(id, sent).andExpect(status().isCreated());
        sendPhoto(id, sent).andExpect(status().isCreated());
        http.perform(get("/api/v1/houses/{h}/photos", house).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(jsonPath("$", hasSize(1)));
        byte[] served = http.perform(
                        get("/api/v1/houses/{h}/photos/{id}", house, id).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(status().isOk())
                .andExpect(content().contentType(MediaType.IMAGE_JPEG))
                .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                .andExpect(header().string("Content-Disposition", containsString("attachment")))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        assertThat(new String(served, java.nio.charset.StandardCharsets.ISO_8859_1))
                .doesNotContain("Exif")
                .doesNotContain(Jpegs.DEVICE);
        String elsewhere = HouseFixtures.house(houses, "UTC");
        http.perform(get("/api/v1/houses/{h}/photos/{id}", elsewhere, id).with(SignedIn.as(Role.SITE_LEAD)))
                .andExpect(status().isNotFound());
    }

    private void everythingRightBut(String left) throws Exception {
        String shown = http.perform(get(path()).with(SignedIn.as(Role.SITE_LEAD)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        List<Map<String, Object>> rows = JsonPath.read(shown, "$.rows");
        for (Map<String, Object> row : rows) {
            if (row.get("id").equals(left)) {
                continue;
            }
            @SuppressWarnings("unchecked")
            Map<String, Object> number = (Map<String, Object>) row.get("number");
            Double value = number == null
                    ? null
                    : Double.valueOf(String.valueOf(number.get("max") == null ? number.get("min") : number.get("max")));
            List<UUID> photos = new java.util.ArrayList<>();
            for (int i = 0; i < (int) row.get("leastPhotos"); i++) {
                photos.add(photo());
            }
            rowAnswer((String) row.get("id"), Role.SITE_LEAD, body(UUID.randomUUID(), "RIGHT", value, EARLY, photos))
                    .andExpect(status().isOk());
        }
    }

    private String path() {
        return "/api/v1/houses/" + house + "/cover-checks/C9";
    }

    private ResultActions answer(String row, Role role, String answer, Double value, Instant at) throws Exception {
        return rowAnswer(row, role, body(UUID.randomUUID(), answer, value, at, List.of()));
    }

    private ResultActions rowAnswer(String row, Role role, String body) throws Exception {
        return send(post(path() + "/rows/" + row + "/answers"), role, body);
    }

    private ResultActions acceptance(String row, Role role) throws Exception {
        return send(post(path() + "/rows/" + row + "/acceptance"), role, "{\"reason\":\"Second photo lost.\"}");
    }

    private ResultActions sign(Role role) throws Exception {
        String shown = http.perform(get(path()).with(SignedIn.as(Role.PRINCIPAL)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        return send(post(path() + "/signature"), role, "{\"copyCode\":\"" + JsonPath.read(shown, "$.copyCode") + "\"}");
    }

    private static String body(UUID id, String answer, Double value, Instant at, List<UUID> photos) {
        return "{\"clientId\":\"%s\",\"answer\":\"%s\",%s\"takenAt\":\"%s\",\"photos\":[%s]}"
                .formatted(
                        id,
                        answer,
                        value == null ? "" : "\"value\":" + value + ",",
                        at,
                        String.join(
                                ",", photos.stream().map(p -> "\"" + p + "\"").toList()));
    }

    private static List<Object> answers(String check, String row) {
        return JsonPath.<List<List<Object>>>read(check, "$.rows[?(@.id=='" + row + "')].answers")
                .get(0);
    }

    private UUID photo() throws Exception {
        UUID id = UUID.randomUUID();
        sendPhoto(id, Jpegs.encode(Jpegs.halves(32, 24))).andExpect(status().isCreated());
        return id;
    }

    private ResultActions sendPhoto(UUID id, byte[] file) throws Exception {
        return http.perform(multipart("/api/v1/houses/{h}/photos", house)
                .file(new MockMultipartFile("file", "IMG_0001.jpg", "image/jpeg", file))
                .param("clientId", id.toString())
                .param("place", "north-east corner")
                .param("card", house + ", north-east, high")
                .param("takenAt", EARLY.toString())
                .with(SignedIn.as(Role.SITE_LEAD)));
    }

    private ResultActions make(Role role, String body) throws Exception {
        return send(post("/api/v1/houses/" + house + "/cover-checks"), role, body);
    }

    private ResultActions send(MockHttpServletRequestBuilder request, Role role, String body) throws Exception {
        return http.perform(
                request.contentType(MediaType.APPLICATION_JSON).content(body).with(SignedIn.as(role)));
    }
}
