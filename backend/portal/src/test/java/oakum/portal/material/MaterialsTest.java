package oakum.portal.material;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.physics.material.MaterialLibrary;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

@PortalTest
class MaterialsTest {
    private static final AtomicInteger NUMBERS = new AtomicInteger();
    private static final String MATERIALS = "/api/v1/materials";

    @Autowired
    MockMvc http;

    @Autowired
    JdbcClient jdbc;

    private static ObjectNode sheet(double conductivityWPerMK) {
        ObjectNode sheet = JsonMapper.shared().createObjectNode();
        sheet.put("id", "board-" + NUMBERS.incrementAndGet())
                .put("label", "Board from the data sheet")
                .put("densityKgPerM3", 160)
                .put("conductivityWPerMK", conductivityWPerMK)
                .put("saturationWaterKgPerM3", 400)
                .put("mouldSensitivity", "SENSITIVE")
                .put("source", "data sheet of March 2026")
                .put("status", "SEEN");
        sheet.putArray("resistanceFactors")
                .add(point("resistanceFactor", 0.25, 5))
                .add(point("resistanceFactor", 0.75, 3));
        sheet.putArray("diffusionThicknesses");
        sheet.putArray("sorption").add(point("waterFraction", 0.5, 0.07)).add(point("waterFraction", 0.8, 0.12));
        return sheet;
    }

    private static ObjectNode point(String component, double humidity, double value) {
        return JsonMapper.shared()
                .createObjectNode()
                .put("humidityFraction", humidity)
                .put(component, value);
    }

    @Test
    void what_a_data_sheet_says_is_computed_with_in_a_wall() throws Exception {
        JsonNode added = json(add(sheet(0.04)).andExpect(status().isCreated()));

        assertThat(added.get("own").asBoolean()).isTrue();
        assertThat(added.get("addedBy").asString()).isEqualTo("designer");
        String id = added.get("id").asString();
        assertThat(id).matches("own-board-[0-9]+@[0-9a-f]{8}");
        JsonNode answer = wall(id, 0.2);
        // R_si 0.13 and R_se 0.04 of ISO 6946
        assertThat(answer.at("/output/resistanceM2KPerW").asDouble()).isCloseTo(0.13 + 0.2 / 0.04 + 0.04, within(1e-9));
        assertThat(answer.at("/output/layers/0/valuesFrom").asString()).contains("data sheet of March 2026");
    }

    @Test
    void every_property_stands_with_its_value_unit_and_source() throws Exception {
        JsonNode added = json(add(sheet(0.04)));

        JsonNode resistance = property(added, "VAPOUR_RESISTANCE");
        assertThat(resistance.get("source").asString()).isEqualTo("data sheet of March 2026");
        assertThat(resistance.get("statusLabel").asString()).isEqualTo("seen");
        assertThat(resistance.at("/values/0/points/1/humidityFraction").asDouble())
                .isEqualTo(0.75);
        assertThat(resistance.at("/values/0/points/1/value").asDouble()).isEqualTo(3);
        assertThat(property(added, "CONDUCTIVITY").at("/values/0/value").asDouble())
                .isEqualTo(0.04);
        assertThat(property(added, "CONDUCTIVITY").at("/values/0/unit/ucum").asString())
                .isEqualTo("W/(m.K)");
        assertThat(property(added, "MOULD_SENSITIVITY").at("/values/0/choice").asString())
                .isNotEmpty();
        assertThat(added.get("properties")
                        .valueStream()
                        .map(p -> p.get("property").asString()))
                .doesNotContain("HEAT_CAPACITY", "AIR_PERMEANCE");
    }

    @Test
    void the_list_begins_with_what_comes_with_the_portal_and_pages_reach_all() throws Exception {
        for (int i = 0; i < 3; i++) {
            add(sheet(0.05));
        }
        JsonNode page = read(MATERIALS + "?limit=2&all=true");
        assertThat(page.get("items").valueStream().map(m -> m.get("id").asString()))
                .startsWith(MaterialLibrary.all().iterator().next().id())
                .hasSize(MaterialLibrary.all().size() + 2);
        assertThat(page.get("items")
                        .valueStream()
                        .flatMap(m -> m.get("properties").valueStream()))
                .allSatisfy(p -> {
                    assertThat(p.get("source").asString()).isNotBlank();
                    assertThat(p.get("values").isEmpty()).as("%s", p).isFalse();
                });
        Set<String> seen = new HashSet<>(ids(page));
        int listed = ids(page).size();
        while (!page.get("next").isNull()) {
            page = json(http.perform(get(MATERIALS)
                    .param("limit", "2")
                    .param("all", "true")
                    .param("cursor", page.get("next").asString())
                    .with(SignedIn.as(Role.OWNER))));
            seen.addAll(ids(page));
            listed += ids(page).size();
        }
        assertThat(seen).hasSize(listed);
        assertThat(seen.stream().filter(id -> id.startsWith("own-")).count())
                .isEqualTo(jdbc.sql("select count(*) from material.own")
                        .query(Long.class)
                        .single());
    }

    @Test
    void a_sorption_table_that_falls_is_refused_with_material_and_value() throws Exception {
        ObjectNode falls = sheet(0.04);
        falls.putArray("sorption").add(point("waterFraction", 0.5, 0.12)).add(point("waterFraction", 0.8, 0.07));

        add(falls)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("outside-limits"))
                .andExpect(jsonPath("$.errors[0].field").value("sorption[1].waterFraction"))
                .andExpect(jsonPath("$.errors[0].value").value("0.07"))
                .andExpect(jsonPath("$.errors[0].detail")
                        .value(org.hamcrest.Matchers.startsWith("Material \"Board from the data sheet\"")));
    }

    @Test
    void a_changed_data_sheet_takes_the_place_of_the_old_one_which_can_still_be_computed_with() throws Exception {
        ObjectNode sheet = sheet(0.04);
        String old = json(add(sheet)).get("id").asString();
        String later = json(add(sheet.deepCopy().put("conductivityWPerMK", 0.05)))
                .get("id")
                .asString();

        assertThat(later).isNotEqualTo(old);
        assertThat(offered()).contains(later).doesNotContain(old);
        JsonNode kept = read(MATERIALS + "/" + old);
        assertThat(kept.get("supersededBy").asString()).isEqualTo(later);
        assertThat(kept.get("offered").asBoolean()).isFalse();
        assertThat(wall(old, 0.2).at("/output/resistanceM2KPerW").asDouble()).isCloseTo(5.17, within(1e-9));
        assertThat(wall(later, 0.2).at("/output/resistanceM2KPerW").asDouble()).isCloseTo(4.17, within(1e-9));

        // the first sheet was right after all
        assertThat(json(add(sheet).andExpect(status().isOk())).get("id").asString())
                .isEqualTo(old);
        assertThat(offered()).contains(old).doesNotContain(later);
    }

    @Test
    void the_same_content_again_is_the_same_material_and_nothing_is_recorded_twice() throws Exception {
        ObjectNode sheet = sheet(0.04);
        JsonNode first = json(add(sheet).andExpect(status().isCreated()));
        JsonNode second = json(add(sheet).andExpect(status().isOk()));

        assertThat(second).isEqualTo(first);
        assertThat(jdbc.sql("select act from people.audit_line where resource = ?")
                        .param(MATERIALS + "/" + first.get("id").asString())
                        .query(String.class)
                        .list())
                .containsExactly("material-added");
    }

    @Test
    void what_is_withdrawn_is_offered_no_longer_and_stays_readable() throws Exception {
        ObjectNode sheet = sheet(0.04);
        JsonNode added = json(add(sheet));
        String id = added.get("id").asString();
        assertThat(added.at("/actions/0").asString()).isEqualTo("withdraw-material");

        JsonNode withdrawn = json(withdraw(id).andExpect(status().isOk()));
        assertThat(withdrawn.get("withdrawnBy").asString()).isEqualTo("designer");
        assertThat(withdrawn.get("actions").isEmpty()).isTrue();
        assertThat(json(withdraw(id))).isEqualTo(withdrawn);
        assertThat(offered()).doesNotContain(id);
        assertThat(wall(id, 0.2).at("/output/resistanceM2KPerW").asDouble()).isCloseTo(5.17, within(1e-9));

        withdraw("plywood")
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("material-bundled"));
        withdraw("own-nothing@00000000").andExpect(status().isNotFound());
        add(sheet).andExpect(status().isOk()).andExpect(jsonPath("$.offered").value(true));
    }

    @Test
    void a_row_whose_values_were_changed_in_the_database_is_not_taken_for_the_same() throws Exception {
        String id = json(add(sheet(0.04))).get("id").asString();
        jdbc.sql("update material.own set typed = jsonb_set(typed, '{conductivityWPerMK}', '0.02') where id = ?")
                .param(id)
                .update();

        assertThatThrownBy(() -> MaterialLibrary.find(id))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining(id);
        jdbc.sql("delete from material.own where id = ?").param(id).update();
    }

    @Test
    void the_form_of_a_data_sheet_is_declared() throws Exception {
        JsonNode fields = read(MATERIALS + "/fields");

        assertThat(fields.valueStream().map(field -> field.get("name").asString()))
                .startsWith("id", "label", "densityKgPerM3")
                .endsWith("source", "status");
        assertThat(fields.valueStream()
                        .filter(field -> field.get("kind").asString().equals("ROWS")))
                .hasSize(3);
    }

    private static JsonNode property(JsonNode material, String property) {
        return material.get("properties")
                .valueStream()
                .filter(p -> p.get("property").asString().equals(property))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> ids(JsonNode page) {
        return page.get("items").valueStream().map(m -> m.get("id").asString()).toList();
    }

    private List<String> offered() throws Exception {
        return ids(read(MATERIALS + "?limit=500"));
    }

    private JsonNode wall(String material, double thicknessM) throws Exception {
        String wall =
                "{\"placement\": {\"kind\": \"WALL\"}, \"fasteners\": [], \"layers\": [{\"id\": \"board\", \"thicknessM\": "
                        + thicknessM + ", \"materialId\": \"" + material + "\"}]}";
        return json(send(post("/api/v1/calculations/assembly-resistance"), wall).andExpect(status().isOk()));
    }

    private ResultActions add(JsonNode sheet) throws Exception {
        return send(post(MATERIALS), sheet.toString());
    }

    private ResultActions withdraw(String id) throws Exception {
        return http.perform(post(MATERIALS + "/" + id + "/withdrawal").with(SignedIn.as(Role.DESIGNER)));
    }

    private ResultActions send(MockHttpServletRequestBuilder request, String body) throws Exception {
        return http.perform(request.with(SignedIn.as(Role.DESIGNER))
                .contentType("application/json")
                .content(body));
    }

    private JsonNode read(String path) throws Exception {
        return json(http.perform(get(path).with(SignedIn.as(Role.DESIGNER))).andExpect(status().isOk()));
    }

    private static JsonNode json(ResultActions answer) throws Exception {
        return JsonMapper.shared().readTree(answer.andReturn().getResponse().getContentAsString(UTF_8));
    }
}
