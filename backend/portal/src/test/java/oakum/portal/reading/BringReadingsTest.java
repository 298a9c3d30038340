package oakum.portal.reading;

import static oakum.portal.reading.Deliveries.gzip;
import static oakum.portal.reading.Deliveries.json;
import static oakum.portal.reading.Deliveries.send;
import static oakum.portal.reading.Deliveries.series;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;

@PortalTest
class BringReadingsTest {
    @Autowired
    MockMvc http;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Houses houses;

    private String house;

    @BeforeEach
    void a_house_with_two_sensors() throws Exception {
        house = HouseFixtures.house(houses);
        Deliveries.sensor(http, house, "kitchen-t", ObservedProperty.AIR_TEMPERATURE);
        Deliveries.sensor(http, house, "kitchen-rh", ObservedProperty.RELATIVE_HUMIDITY);
    }

    @Test
    void a_long_table_goes_in_once_however_often_it_is_sent() throws Exception {
        String table = """
                sensor,at,value
                kitchen-t,2026-05-14T09:00:00Z,21.5
                kitchen-rh,2026-05-14T09:00:00Z,0.41
                kitchen-t,2026-05-14T09:05:00Z,21.6
                """;
        counts(send(http, house, "", table), 3, 3, 0, 0);
        counts(send(http, house, "", table), 3, 0, 3, 0);
        assertThat(kept()).isEqualTo(3);
    }

    @Test
    void a_wide_table_goes_in_packed_or_not() throws Exception {
        String table = "at;kitchen-t;kitchen-rh\n2026-05-14 09:00;21,5;0,41\n2026-05-14 09:05;21,6;\n";
        String query = "?zone=%2B03:00&decimal=comma";
        counts(send(http, house, query, gzip(table)), 3, 3, 0, 0)
                .andExpect(jsonPath("$.empty").value(1));
        counts(send(http, house, query.replace("%2B", "+"), "\uFEFF" + table), 3, 0, 3, 0);
    }

    @Test
    void objects_one_a_line_go_in_and_what_is_none_is_refused_line_by_line() throws Exception {
        String lines = """
                {"sensor":"kitchen-t","at":"2026-05-14T09:00:00Z","value":21.5}

                {"sensor":"kitchen-t","at":"2026-05-14T09:05:00Z","value":"21.5"}
                {"sensor":"kitchen-t","at":"2026-05-14T09:10:00Z","value":21.5,"note":"x"}
                {"sensor":"kitchen-t","at":"2026-05-14T09:10:00Z"
                {"sensor":"attic","at":"2026-05-14T09:10:00Z","value":1}
                {"sensor":"kitchen-t","at":7,"value":1}
                [1]
                """;
        ResultActions answer = http.perform(post("/api/v1/houses/" + house + "/readings")
                .with(SignedIn.as(Role.OFFICE_MANAGER))
                .contentType("application/x-ndjson")
                .content(lines));
        counts(answer, 7, 1, 0, 6);
        assertThat(json(answer).get("refusals").findValuesAsString("line"))
                .containsExactly("3", "4", "5", "6", "7", "8");
    }

    /** The line, the field and a piece of the reason. */
    static Stream<Arguments> lines_that_cannot_be() {
        return Stream.of(
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,warm", "value", "not a number"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,NaN", "value", "not a number"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,\"21,5\"", "value", "decimal=,"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,", "value", "no number"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,-9900", "value", "outside -80.0 to 100.0 Cel"),
                Arguments.of("kitchen-rh,2026-05-14T09:00:00Z,41", "value", "outside 0.0 to 1.05"),
                Arguments.of("attic,2026-05-14T09:00:00Z,1", "sensor", "no sensor"),
                Arguments.of("kitchen-t,yesterday,1", "at", "not a time"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00,1", "at", "name its zone"),
                Arguments.of("kitchen-t,1880-05-14T09:00:00Z,1", "at", "outside 1970"),
                Arguments.of("kitchen-t,9999-05-14T09:00:00Z,1", "at", "outside 1970"),
                Arguments.of("kitchen-t;2026-05-14T09:00:00Z;1", "", "1 fields where the header has 3"),
                Arguments.of("kitchen-t,2026-05-14T09:00:00Z,1,2", "", "4 fields where the header has 3"));
    }

    @ParameterizedTest
    @MethodSource("lines_that_cannot_be")
    void a_line_that_cannot_be_is_refused_with_its_reason_and_the_others_go_in(String line, String field, String reason)
            throws Exception {
        ResultActions answer = send(
                http,
                house,
                "",
                "sensor,at,value\nkitchen-t,2026-05-13T09:00:00Z,20\n" + line
                        + "\nkitchen-t,2026-05-13T09:05:00Z,20.1\n");
        counts(answer, 3, 2, 0, 1);
        JsonNode refusal = json(answer).get("refusals").get(0);
        assertThat(refusal.get("line").asInt()).isEqualTo(3);
        assertThat(refusal.get("field").asString()).isEqualTo(field);
        assertThat(refusal.get("reason").asString()).contains(reason);
        String link = json(answer).get("rejectsLink").asString();
        http.perform(get(link).with(SignedIn.as(Role.OFFICE_MANAGER)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.items[0].reason")
                        .value(refusal.get("reason").asString()))
                .andExpect(jsonPath("$.items[0].text").value(line.replace("\"", "")));
    }

    /** Query, body, status, code: the whole file is refused and nothing of it is kept. */
    static Stream<Arguments> bodies_that_cannot_be() {
        byte[] whole = gzip("sensor,at,value\n" + "kitchen-t,2026-05-14T09:00:00Z,21.5\n".repeat(2000));
        byte[] damaged = whole.clone();
        damaged[damaged.length / 2] ^= 0x55;
        return Stream.of(
                Arguments.of("", bytes("time,kitchen-t\n2026-05-14T09:00:00Z,1\n"), 400, "wrong-header"),
                Arguments.of("", bytes("at,kitchen-t,attic\n2026-05-14T09:00:00Z,1,2\n"), 400, "wrong-header"),
                Arguments.of("", bytes("at,kitchen-t,kitchen-t\n2026-05-14T09:00:00Z,1,2\n"), 400, "wrong-header"),
                Arguments.of("", bytes("at\n2026-05-14T09:00:00Z\n"), 400, "wrong-header"),
                Arguments.of("", bytes(""), 400, "wrong-header"),
                Arguments.of("?headerLine=9", bytes("at,kitchen-t\n"), 400, "wrong-header"),
                Arguments.of("", bytes("at,kitchen-t;kitchen-rh\n"), 400, "mixed-separators"),
                Arguments.of("", bytes("at,kitchen-t\n2026-05-14T09:00:00Z;1\n"), 400, "mixed-separators"),
                Arguments.of("", bytes("at,kitchen-t\n2026-05-14T09:00:00Z,\"1\n"), 400, "body-malformed"),
                Arguments.of("", new byte[] {'a', 't', ',', (byte) 0xe9, '\n'}, 400, "body-malformed"),
                Arguments.of("", Arrays.copyOf(whole, whole.length - 10), 400, "body-cut-short"),
                Arguments.of("", Arrays.copyOf(whole, 12), 400, "body-cut-short"),
                Arguments.of("", damaged, 400, "body-malformed"),
                Arguments.of("?zone=Mars", bytes("at,kitchen-t\n"), 422, "column-map"),
                Arguments.of("?delimiter=x", bytes("at,kitchen-t\n"), 422, "column-map"),
                Arguments.of("?decimal=x", bytes("at,kitchen-t\n"), 422, "column-map"),
                Arguments.of("?headerLine=0", bytes("at,kitchen-t\n"), 422, "column-map"),
                Arguments.of("?timeFormat=Q%7B", bytes("at,kitchen-t\n"), 422, "column-map"),
                Arguments.of("?map=none", bytes("at,kitchen-t\n"), 404, "not-found"));
    }

    @ParameterizedTest
    @MethodSource("bodies_that_cannot_be")
    void a_body_that_cannot_be_is_refused_whole(String query, byte[] body, int status, String code) throws Exception {
        send(http, house, query, body)
                .andExpect(status().is(status))
                .andExpect(jsonPath("$.code").value(code));
        assertThat(kept()).isZero();
    }

    @Test
    void more_than_two_hundred_megabytes_are_refused_also_where_a_small_packed_file_unpacks_to_them() throws Exception {
        byte[] bomb = gzip("sensor,at,value\n" + "\n".repeat(200_000_000));
        assertThat(bomb).hasSizeLessThan(1_000_000);
        send(http, house, "", bomb)
                .andExpect(status().is(413))
                .andExpect(jsonPath("$.code").value("body-too-large"))
                .andExpect(jsonPath("$.limitBytes").value(200_000_000));
        assertThat(kept()).isZero();
    }

    @Test
    void of_rows_sent_twice_the_first_counts_and_another_value_for_a_known_instant_is_refused() throws Exception {
        ResultActions first = send(http, house, "", """
                sensor,at,value
                kitchen-t,2026-05-14T09:00:00Z,21.5
                kitchen-t,2026-05-14T09:00:00Z,21.5
                kitchen-t,2026-05-14T12:00:00+03:00,22.5
                """);
        counts(first, 3, 1, 1, 1);
        assertThat(json(first).get("refusals").get(0).get("reason").asString())
                .isEqualTo("already known with another value, 21.5");
        counts(send(http, house, "", "sensor,at,value\nkitchen-t,2026-05-14T09:00:00Z,19\n"), 1, 0, 0, 1);
        assertThat(jdbc.sql(
                                "select value from reading.reading r join reading.sensor s on s.id = r.sensor_id where house = ?")
                        .param(house)
                        .query(Double.class)
                        .list())
                .isEqualTo(List.of(21.5));
    }

    @Test
    void the_hours_of_a_clock_change_go_in_where_the_order_tells_them_apart() throws Exception {
        String autumn = """
                at,kitchen-t
                2025-10-26 02:00,1
                2025-10-26 02:30,2
                2025-10-26 03:00,3
                2025-10-26 03:30,4
                2025-10-26 03:00,5
                2025-10-26 03:30,6
                2025-10-26 04:00,7
                """;
        counts(send(http, house, "?zone=Europe/Helsinki", autumn), 7, 7, 0, 0);
        counts(send(http, house, "?zone=Europe/Helsinki", autumn), 7, 0, 7, 0);
        ResultActions spring = send(
                http,
                house,
                "?zone=Europe/Helsinki",
                "at,kitchen-t\n2026-03-29 02:30,1\n2026-03-29 03:30,2\n2026-03-29 04:00,3\n");
        counts(spring, 3, 2, 0, 1);
        assertThat(json(spring).get("refusals").get(0).get("reason").asString()).contains("never was");
    }

    @Test
    void a_column_map_takes_a_foreign_table_as_it_is() throws Exception {
        String map = """
                {"timeColumns":["Date","Time"],"timeFormat":"MM/dd/yyyy HH:mm","zone":"-05:00","headerLine":2,
                 "missing":["-9900"],"columns":[
                 {"column":"Dry bulb","sensor":"kitchen-t"},{"column":"RHum (%)","sensor":"kitchen-rh","factor":0.01}]}
                """;
        http.perform(put("/api/v1/houses/" + house + "/column-maps/typical-year")
                        .with(SignedIn.as(Role.OFFICE_MANAGER))
                        .contentType("application/json")
                        .content(map))
                .andExpect(status().isOk());
        String table = """
                725280,"SOMEWHERE",NY,-5.0
                Date,Time,Dry bulb,source,RHum (%)
                01/31/1988,23:00,-3.5,A,89
                01/31/1988,24:00,-3.9,A,-9900
                02/01/1995,01:00,-4.0,A,1200
                """;
        ResultActions answer = send(http, house, "?map=typical-year", table);
        counts(answer, 5, 4, 0, 1).andExpect(jsonPath("$.empty").value(1));
        assertThat(json(answer).get("refusals").get(0).get("reason").asString()).contains("kept as 12");
        assertThat(jdbc.sql("""
                        select to_char(at at time zone 'UTC', 'YYYY-MM-DD HH24:MI ') || value from reading.reading r
                        join reading.sensor s on s.id = r.sensor_id where house = ? order by at, key""").param(house).query(String.class).list())
                .containsExactly(
                        "1988-02-01 04:00 0.89",
                        "1988-02-01 04:00 -3.5",
                        "1988-02-01 05:00 -3.9",
                        "1995-02-01 06:00 -4");
    }

    @Test
    void a_column_map_that_cannot_be_is_refused_naming_the_member() throws Exception {
        http.perform(
                        put("/api/v1/houses/" + house + "/column-maps/wrong")
                                .with(SignedIn.as(Role.OFFICE_MANAGER))
                                .contentType("application/json")
                                .content(
                                        "{\"columns\":[{\"column\":\"T\",\"sensor\":\"kitchen-t\"},{\"column\":\"U\",\"sensor\":\"attic\"}]}"))
                .andExpect(status().is(422))
                .andExpect(jsonPath("$.field").value("columns[1].sensor"));
    }

    @Test
    void the_hourly_values_are_those_of_the_readings_whatever_order_they_came_in() throws Exception {
        send(
                http,
                house,
                "",
                "sensor,at,value\nkitchen-t,2026-05-14T09:00:00Z,20\nkitchen-t,2026-05-14T11:59:59Z,24\n");
        send(
                http,
                house,
                "",
                "sensor,at,value\nkitchen-t,2026-05-14T09:30:00Z,22\nkitchen-t,2026-05-14T10:00:00Z,30\n");
        String hours =
                "select string_agg(to_char(hour at time zone 'UTC', 'HH24') || ':' || count || ':' || min || ':' || mean || ':' || max, ' ' order by hour)"
                        + " from reading.hour h join reading.sensor s on s.id = h.sensor_id where house = ?";
        assertThat(jdbc.sql(hours).param(house).query(String.class).single())
                .isEqualTo("09:2:20:21:22 10:1:30:30:30 11:1:24:24:24");
        series(http, house, "sensor=kitchen-t&from=2026-05-14T09:00:00Z&to=2026-05-14T12:00:00Z&points=3")
                .andExpect(jsonPath("$.source").value("hours"))
                .andExpect(jsonPath("$.bucketS").value(3600))
                .andExpect(jsonPath("$.series[0].buckets.length()").value(3))
                .andExpect(jsonPath("$.series[0].buckets[0].mean").value(21.0));
        series(http, house, "sensor=kitchen-t&from=2026-05-14T09:00:00Z&to=2026-05-14T12:00:00Z&points=6")
                .andExpect(jsonPath("$.source").value("readings"))
                .andExpect(jsonPath("$.series[0].buckets.length()").value(4));
    }

    @Test
    void the_fingerprint_of_a_series_changes_with_a_reading() throws Exception {
        String ask = "/api/v1/houses/" + house
                + "/readings/series-hash?sensor=kitchen-t&from=2026-05-14T00:00:00Z&to=2026-05-15T00:00:00Z";
        send(http, house, "", "sensor,at,value\nkitchen-t,2026-05-14T09:00:00Z,20\n");
        JsonNode before = json(http.perform(get(ask).with(SignedIn.as(Role.DESIGNER))));
        send(http, house, "", "sensor,at,value\nkitchen-t,2026-05-14T09:00:00Z,20\n");
        assertThat(json(http.perform(get(ask).with(SignedIn.as(Role.DESIGNER)))))
                .isEqualTo(before);
        send(http, house, "", "sensor,at,value\nkitchen-t,2026-05-14T08:00:00Z,20\n");
        assertThat(json(http.perform(get(ask).with(SignedIn.as(Role.DESIGNER)))).get("hash"))
                .isNotEqualTo(before.get("hash"));
    }

    @Test
    void who_may_not_see_a_house_finds_none_and_who_may_not_bring_readings_is_told_so() throws Exception {
        http.perform(post("/api/v1/houses/" + house + "/readings")
                        .with(SignedIn.as(Role.OWNER, "READ-OTHER"))
                        .contentType("text/csv")
                        .content("sensor,at,value\n"))
                .andExpect(status().isNotFound());
        http.perform(post("/api/v1/houses/" + house + "/readings")
                        .with(SignedIn.as(Role.SITE_LEAD))
                        .contentType("text/csv")
                        .content("sensor,at,value\n"))
                .andExpect(status().isForbidden());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    private long kept() {
        return jdbc.sql(
                        "select count(*) from reading.reading r join reading.sensor s on s.id = r.sensor_id where house = ?")
                .param(house)
                .query(Long.class)
                .single();
    }

    private static ResultActions counts(ResultActions answer, int received, int accepted, int alreadyKnown, int refused)
            throws Exception {
        return answer.andExpect(result -> assertThat(result.getResponse().getContentAsString())
                .contains("\"received\":" + received + ",")
                .contains("\"accepted\":" + accepted + ",")
                .contains("\"alreadyKnown\":" + alreadyKnown + ",")
                .contains("\"refused\":" + refused + ","));
    }
}
