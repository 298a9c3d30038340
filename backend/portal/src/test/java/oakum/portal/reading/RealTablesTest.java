package oakum.portal.reading;

import static oakum.portal.reading.Deliveries.json;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.file.Files;
import java.nio.file.Path;
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
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Published tables go in as they are, with the sensors and column maps of the how-to page. The numbers of lines and
 * values that are expected were counted in the files themselves.
 */
@PortalTest
class RealTablesTest {
    @Autowired
    MockMvc http;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Houses houses;

    /** 15,882 rows with T and RH of nine places, airport weather and electricity. */
    @Test
    void the_readings_of_a_belgian_low_energy_house_go_in_once() throws Exception {
        Path file = OpenData.file("indoor-low-energy-house-belgium/energydata-2016-01-11--2016-04-30.csv.gz");
        String house = house("belgian-house");
        twice(house, "belgian-house", file, 15_882L * 26, 0);
        JsonNode chart = json(Deliveries.series(
                http, house, "sensor=kitchen-t&from=2016-01-11T00:00:00Z&to=2016-05-01T00:00:00Z&points=500"));
        assertThat(chart.at("/series/0/buckets").size()).isBetween(400, 500);
        assertThat(chart.at("/series/0/buckets/0/at").asString()).isEqualTo("2016-01-11T13:00:00Z");
        assertThat(chart.at("/series/0/buckets/0/mean").asDouble()).isBetween(19.0, 21.0);
    }

    /** A file of two header lines, months of different years and an hour 24; missing values are -9900. */
    @Test
    void a_typical_year_goes_in_once() throws Exception {
        Path file = OpenData.file("weather-tmy3/buffalo-ny-725280.csv.gz");
        String house = house("typical-year");
        // nine columns, all there but one hour of visibility
        twice(house, "typical-year", file, 8_760L * 10 - 1, 0);
        assertThat(jdbc.sql("""
                        select count(distinct date_trunc('year', at at time zone '-05:00'))
                        from reading.reading r join reading.sensor s on s.id = r.sensor_id where house = ?""").param(house).query(Integer.class).single()).isGreaterThan(5);
    }

    @Test
    void the_logs_of_a_finnish_wall_go_in_once_each_under_its_own_map() throws Exception {
        String house = house("finnish-wall-indoor", "finnish-wall-wind-barrier", "finnish-roof-outdoor");
        twice(
                house,
                "finnish-wall-indoor",
                OpenData.file("envelope-trh-finland/R1-wall__indoor.csv.gz"),
                16_325L * 2,
                0);
        twice(
                house,
                "finnish-wall-wind-barrier",
                OpenData.file("envelope-trh-finland/R1-wall__interface_insulation_windbarrier.csv.gz"),
                16_325L * 2,
                0);
        twice(
                house,
                "finnish-roof-outdoor",
                OpenData.file("envelope-trh-finland/R2-roof__outdoor_fmi.csv.gz"),
                13_921L * 7,
                0);
    }

    private void twice(String house, String map, Path file, long values, long refused) throws Exception {
        byte[] body = Files.readAllBytes(file);
        JsonNode first = json(Deliveries.send(http, house, "?map=" + map, body).andExpect(status().isOk()));
        assertThat(first.get("refused").asLong()).as(first.toString()).isEqualTo(refused);
        assertThat(first.get("accepted").asLong()).as(first.toString()).isEqualTo(values);
        JsonNode second = json(Deliveries.send(http, house, "?map=" + map, body).andExpect(status().isOk()));
        assertThat(second.get("received")).isEqualTo(first.get("received"));
        assertThat(second.get("accepted").asLong()).isZero();
        assertThat(second.get("alreadyKnown")).isEqualTo(first.get("accepted"));
        assertThat(second.get("refused")).isEqualTo(first.get("refused"));
    }

    /** The house with the sensors and maps of the how-to page. */
    private String house(String... maps) throws Exception {
        String id = HouseFixtures.house(houses);
        for (String map : maps) {
            JsonNode kept = JsonMapper.shared().readTree(howTo(map + ".json").toFile());
            for (JsonNode sensor : kept.get("sensors")) {
                Deliveries.sensor(
                        http,
                        id,
                        sensor.get("key").asString(),
                        ObservedProperty.of(sensor.get("property").asString()));
            }
            http.perform(put("/api/v1/houses/" + id + "/column-maps/" + map)
                            .with(SignedIn.as(Role.OFFICE_MANAGER))
                            .contentType("application/json")
                            .content(kept.get("map").toString()))
                    .andExpect(status().isOk());
        }
        return id;
    }

    private static Path howTo(String name) {
        return OpenData.repository().resolve("docs/how-to/column-maps").resolve(name);
    }
}
