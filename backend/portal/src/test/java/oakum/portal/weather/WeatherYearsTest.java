package oakum.portal.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.ByteArrayInputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.zip.GZIPInputStream;
import oakum.physics.weather.BundledYears;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.WeatherShelves;
import oakum.portal.OpenData;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

@PortalTest
class WeatherYearsTest {
    private static final AtomicInteger NUMBERS = new AtomicInteger();
    private static final String MAP = """
            {"headerLine": 1, "firstDataLine": 2, "delimiter": ";", "decimal": ",", "timeColumns": ["time"],
             "timeFormat": "", "clockOffsetH": 0, "dates": "AS_DATED", "sums": "BEFORE_STAMP", "humidity": "OVER_WATER",
             "missing": ["---"],
             "columns": [{"column": "T", "meaning": "AIR_TEMPERATURE", "unit": "CELSIUS"},
                         {"column": "RH", "meaning": "RELATIVE_HUMIDITY", "unit": "PERCENT"}]}""";

    @Autowired
    MockMvc http;

    @Autowired
    WeatherRows rows;

    @Autowired
    Houses houses;

    @Autowired
    JdbcClient jdbc;

    @Test
    void a_typical_year_as_published_is_kept_once() throws Exception {
        byte[] file = Files.readAllBytes(OpenData.file("weather-tmy3/buffalo-ny-725280.csv.gz"));

        JsonNode first = json(bring("?format=tmy3&attribution=public%20domain", file));
        JsonNode second = json(bring("?format=tmy3", file).andExpect(status().isOk()));

        assertThat(second).isEqualTo(first);
        assertThat(first.get("hours").asInt()).isEqualTo(8760);
        assertThat(first.get("wholeYear").asBoolean()).isTrue();
        assertThat(first.at("/place/latitudeDeg").asDouble()).isCloseTo(42.9, within(0.1));
        // mean of the column "Dry-bulb (C)" of January, counted in the file itself
        assertThat(first.at("/months/0/temperatureC").asDouble()).isCloseTo(januaryMean(file), within(0.01));
        assertThat(first.at("/quantities").toString()).contains("DIRECT_NORMAL", "WIND_DIRECTION");
        // such files know rain for a part of the hours only; that is told, not filled in
        assertThat(first.at("/notices").toString()).contains("typical-year", "rain-not-read");
    }

    @Test
    void a_table_goes_in_through_a_saved_map_and_sent_again_nothing_doubles() throws Exception {
        String map = map();
        String table = table(72, -5);

        JsonNode added = json(bring(place(map), table).andExpect(status().isCreated()));
        JsonNode again = json(bring(place(map), table).andExpect(status().isOk()));

        assertThat(again).isEqualTo(added);
        assertThat(added.get("addedBy").asString()).isEqualTo("designer");
        assertThat(added.at("/months/0/temperatureC").asDouble()).isCloseTo(-5, within(1e-9));
        http.perform(get("/api/v1/weather-years/" + added.get("id").asString()).with(SignedIn.as(Role.OFFICE_MANAGER)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.hash").value(added.get("hash").asString()));
    }

    @Test
    void hours_come_back_from_the_database_with_their_hash_and_notices() throws Exception {
        JsonNode added = json(bring(place(map()), table(48, 3.25)));

        HourlyWeather kept = rows.hours(added.get("id").asString()).orElseThrow();

        assertThat(kept.contentHash()).isEqualTo(added.get("hash").asString());
        assertThat(kept.temperatureC(46)).isEqualTo(3.25);
        assertThat(kept.notices()).extracting(n -> n.code()).contains("humidity-convention");
        assertThat(WeatherShelves.find(added.get("hash").asString())).isPresent();
        jdbc.sql("delete from weather.year where hash = ?")
                .param(added.get("id").asString())
                .update();
    }

    @Test
    void a_bad_line_is_named_with_column_value_and_range_and_nothing_is_kept() throws Exception {
        String table = table(30, 4).replace("T05:00;4,00;80", "T05:00;4,00;180");

        bring(place(map()), table)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("outside-limits"))
                .andExpect(jsonPath("$.errors[0].field").value("line 7, column RH"))
                .andExpect(jsonPath("$.errors[0].max").value(1.1));
        bring(place(map()), table(30, 4).replace("T03:00;4,00", "T03:00;warm"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].field").value("line 5, column T"))
                .andExpect(jsonPath("$.errors[0].value").value("warm"));
    }

    @Test
    void it_must_be_said_how_a_table_is_read_and_where_it_was_measured() throws Exception {
        bring("", table(30, 1))
                .andExpect(status().isBadRequest())
                .andExpect(jsonPath("$.code").value("parameter-malformed"));
        bring("?format=tmy3", table(30, 1))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].field").value("line 1"));
        bring("?table=" + map(), table(30, 1))
                .andExpect(status().isBadRequest())
                .andExpect(jsonPath("$.code").value("parameter-missing"))
                .andExpect(jsonPath("$.field").value("place"));
        bring(place("no-such-map"), table(30, 1)).andExpect(status().isNotFound());
    }

    @Test
    void a_map_is_changed_only_from_the_version_that_was_read() throws Exception {
        String name = map();
        putMap(name, MAP, null).andExpect(status().isPreconditionRequired());
        putMap(name, MAP.replace("---", "NaN"), "\"0\"").andExpect(status().isOk());
        putMap(name, MAP, "\"0\"").andExpect(status().isPreconditionFailed());
        http.perform(get("/api/v1/weather-tables/" + name).with(SignedIn.as(Role.OWNER)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.missing[0]").value("NaN"))
                .andExpect(jsonPath("$.delimiter").value(";"));
    }

    @Test
    void a_map_that_reads_nothing_is_refused() throws Exception {
        putMap("no-humidity", MAP.replace("RELATIVE_HUMIDITY", "WIND_SPEED").replace("PERCENT", "KNOT"), null)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].field").value("columns"));
    }

    @Test
    void normals_become_a_year_that_keeps_their_means() throws Exception {
        JsonNode year = json(normals(normalsJson()).andExpect(status().is2xxSuccessful()));

        assertThat(year.at("/months/0/temperatureC").asDouble()).isCloseTo(-13.5, within(0.01));
        assertThat(year.at("/source").asString()).contains("our own table");
        assertThat(year.at("/notices").toString()).contains("synthetic-year");
        ObjectNode eleven = (ObjectNode) normalsJson();
        eleven.withArray("months").remove(11);
        normals(eleven)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].field").value("months"));
    }

    @Test
    void what_comes_with_the_portal_stands_first_and_pages_go_on_by_place() throws Exception {
        for (int n = 0; n < 3; n++) {
            bring(place(map()), table(30, 10 + NUMBERS.incrementAndGet()));
        }
        JsonNode first = list("?limit=2");
        assertThat(first.at("/items/0/hash").asString())
                .isEqualTo(BundledYears.coldA().contentHash());
        assertThat(first.at("/items/0/bundled").asBoolean()).isTrue();
        assertThat(first.at("/actions/0").asString()).isEqualTo("add-weather-year");
        JsonNode second = list("?limit=2&cursor=" + first.get("next").asString());
        assertThat(second.get("items").size()).isPositive();
        assertThat(first.get("items").toString())
                .doesNotContain(second.at("/items/0/id").asString());
    }

    @Test
    void a_house_points_at_a_year_that_is_kept() throws Exception {
        String house = HouseFixtures.house(houses);
        JsonNode now = json(http.perform(get("/api/v1/houses/" + house).with(SignedIn.as(Role.DESIGNER))));
        ObjectNode measures = (ObjectNode) now.deepCopy();
        measures.remove(List.of("id", "stageLabel", "version", "actions"));

        measures.put("weatherHash", "sha256:" + "0".repeat(64));
        saveHouse(house, measures, 0)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("unknown-weather"))
                .andExpect(jsonPath("$.field").value("house.weatherHash"));
        measures.put("weatherHash", BundledYears.coldA().contentHash());
        saveHouse(house, measures, now.get("version").asLong())
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.weatherHash").value(BundledYears.coldA().contentHash()));
        http.perform(get("/api/v1/houses/" + house + "/parts/house/differences?from=1&to=2")
                        .with(SignedIn.as(Role.DESIGNER)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$[0].path").value("house.weatherHash"))
                .andExpect(jsonPath("$[0].label").value("Weather year"));
    }

    private ResultActions saveHouse(String house, JsonNode measures, long version) throws Exception {
        ObjectNode body = JsonMapper.shared().createObjectNode();
        body.set("house", measures);
        body.put("reason", "Weather chosen");
        return http.perform(put("/api/v1/houses/" + house)
                .with(SignedIn.as(Role.DESIGNER))
                .header("If-Match", "\"" + version + "\"")
                .contentType("application/json")
                .content(body.toString()));
    }

    private static double januaryMean(byte[] file) throws Exception {
        try (var in = new GZIPInputStream(new ByteArrayInputStream(file))) {
            String[] lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\r?\n");
            int column = List.of(lines[1].split(",")).indexOf("Dry-bulb (C)");
            double[] read = Arrays.stream(lines)
                    .skip(2)
                    .mapToDouble(line -> Double.parseDouble(line.split(",")[column]))
                    .toArray();
            // stamped at the hour's end: the state at 00:00 on 1 January is the last line
            double sum = read[read.length - 1];
            for (int i = 0; i < 743; i++) {
                sum += read[i];
            }
            return sum / 744;
        }
    }

    private JsonNode list(String query) throws Exception {
        return json(
                http.perform(get(URI.create("/api/v1/weather-years" + query)).with(SignedIn.as(Role.DESIGNER)))
                        .andExpect(status().isOk()));
    }

    private static JsonNode normalsJson() {
        ObjectNode body = JsonMapper.shared().createObjectNode();
        body.putObject("place")
                .put("name", "Cold Kettle Hill")
                .put("latitudeDeg", 47)
                .put("longitudeDeg", -92)
                .put("altitudeM", 400)
                .put("standardOffsetH", -6);
        body.put("source", "our own table");
        BundledYears.coldA(-3.5)
                .months()
                .forEach(month -> body.withArray("months")
                        .addObject()
                        .put("meanTemperatureC", month.meanTemperatureC())
                        .put("dailyRangeK", month.dailyRangeK())
                        .put("vapourPressurePa", month.vapourPressurePa())
                        .put("dailyDeviationK", 0));
        return body;
    }

    private ResultActions normals(JsonNode body) throws Exception {
        return http.perform(post("/api/v1/weather-years/from-normals")
                .with(SignedIn.as(Role.DESIGNER))
                .contentType("application/json")
                .content(body.toString()));
    }

    private String map() throws Exception {
        String name = "logger-" + NUMBERS.incrementAndGet();
        putMap(name, MAP, null).andExpect(status().isOk());
        return name;
    }

    private ResultActions putMap(String name, String map, String ifMatch) throws Exception {
        var request = put("/api/v1/weather-tables/" + name)
                .with(SignedIn.as(Role.DESIGNER))
                .contentType("application/json")
                .content(map);
        return http.perform(ifMatch == null ? request : request.header("If-Match", ifMatch));
    }

    private static String place(String map) {
        return "?table=" + map
                + "&place=Meadow&latitudeDeg=61&longitudeDeg=24&altitudeM=110&standardOffsetH=2&source=own%20logger";
    }

    private static String table(int hours, double temperatureC) {
        StringBuilder table = new StringBuilder("time;T;RH\n");
        LocalDateTime start = LocalDateTime.of(2024, 1, 10, 0, 0);
        for (int hour = 0; hour < hours; hour++) {
            table.append(start.plusHours(hour)).append(String.format(Locale.GERMAN, ";%.2f;80\n", temperatureC));
        }
        return table.toString();
    }

    private ResultActions bring(String query, String body) throws Exception {
        return bring(query, body.getBytes(StandardCharsets.UTF_8));
    }

    private ResultActions bring(String query, byte[] body) throws Exception {
        return http.perform(post(URI.create("/api/v1/weather-years" + query))
                .with(SignedIn.as(Role.DESIGNER))
                .contentType("text/csv")
                .content(body));
    }

    private static JsonNode json(ResultActions answer) throws Exception {
        return JsonMapper.shared()
                .readTree(answer.andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8));
    }
}
