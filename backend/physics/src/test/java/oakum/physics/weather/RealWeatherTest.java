package oakum.physics.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import oakum.physics.calculation.Notice;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.weather.WeatherColumn.Given;
import oakum.physics.weather.WeatherColumn.Meaning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published weather, read as it is; skipped where the open data is not there. */
class RealWeatherTest {
    @ParameterizedTest
    @CsvSource({
        "weather-tmy3/fargo-nd-727530.csv.gz, -6, 46.933",
        "weather-tmy3/burlington-vt-726170.csv.gz, -5, 44.467",
        "weather-tmy3/buffalo-ny-725280.csv.gz, -5, 42.933",
        "weather-tmy3/sand-point-ak-703165.csv.gz, -9, 55.317"
    })
    void typical_years_are_read_as_published(String file, double offsetH, double latitudeDeg) {
        List<String> lines = OpenData.lines(file);
        HourlyWeather weather = Tmy3.read(lines);

        assertThat(weather.isWholeYear()).isTrue();
        assertThat(weather.place().standardOffsetH()).isEqualTo(offsetH);
        assertThat(weather.place().latitudeDeg()).isEqualTo(latitudeDeg);
        int at = Arrays.asList(lines.get(1).split(",")).indexOf("Dry-bulb (C)");
        double mean = lines.stream()
                .skip(2)
                .mapToDouble(line -> Double.parseDouble(line.split(",")[at]))
                .average()
                .orElseThrow();
        assertThat(weather.mean(WeatherQuantity.AIR_TEMPERATURE)).isCloseTo(mean, within(1e-9));
        assertThat(weather.temperatureC(1))
                .as("the first row is stamped 01:00")
                .isEqualTo(Double.parseDouble(lines.get(2).split(",")[at]));
    }

    /** The yearly rain of Burlington is about 900 mm and of Fargo about 550 mm (from memory). */
    @Test
    void rain_is_read_from_revised_files_only_and_told() {
        HourlyWeather burlington = Tmy3.read(OpenData.lines("weather-tmy3/burlington-vt-726170.csv.gz"));
        HourlyWeather fargo = Tmy3.read(OpenData.lines("weather-tmy3/fargo-nd-727530.csv.gz"));
        HourlyWeather buffalo = Tmy3.read(OpenData.lines("weather-tmy3/buffalo-ny-725280.csv.gz"));

        assertThat(burlington.mean(WeatherQuantity.PRECIPITATION) * 8760).isBetween(500.0, 1300.0);
        assertThat(fargo.mean(WeatherQuantity.PRECIPITATION) * 8760).isBetween(300.0, 800.0);
        assertThat(fargo.notices()).extracting(Notice::code).contains("rain-in-tenths");
        assertThat(buffalo.has(WeatherQuantity.PRECIPITATION)).isFalse();
        assertThat(buffalo.notices()).extracting(Notice::code).contains("rain-not-read");
    }

    @Test
    void the_sun_of_a_typical_year_adds_up_with_where_it_stands() {
        HourlyWeather weather = Tmy3.read(OpenData.lines("weather-tmy3/buffalo-ny-725280.csv.gz"));
        SunCourse sun = SunCourse.over(weather);
        double misfit = 0;
        double total = 0;
        for (int i = 0; i < weather.hours(); i++) {
            double sum = weather.value(WeatherQuantity.DIFFUSE_HORIZONTAL, i)
                    + weather.value(WeatherQuantity.DIRECT_NORMAL, i)
                            * Math.max(0, sun.position(i).cosZenith());
            misfit += Math.abs(sum - weather.value(WeatherQuantity.GLOBAL_HORIZONTAL, i));
            total += weather.value(WeatherQuantity.GLOBAL_HORIZONTAL, i);
        }

        assertThat(misfit / total)
                .as("an hour's shift of the clock would give more than 0.1")
                .isLessThan(0.02);
    }

    /** The stamps are the begin of half hours; the zenith of each row was computed by the source. */
    @Test
    void a_measured_year_of_half_hours_at_altitude() {
        List<String> lines = OpenData.lines("weather-nsrdb-2023-halfhour/nsrdb-40.53N-108.54W-2023-30min.csv.gz");
        Place place = new Place("north-west Colorado", 40.53, -108.54, 2168, -7);
        HourlyWeather weather = new WeatherTable(
                        3,
                        4,
                        ',',
                        '.',
                        List.of("Year", "Month", "Day", "Hour", "Minute"),
                        "yyyy M d H m",
                        -7,
                        WeatherTable.Dates.AS_DATED,
                        WeatherTable.Sums.AFTER_STAMP,
                        BelowFreezing.OVER_WATER,
                        Set.of(),
                        List.of(
                                new WeatherColumn("Temperature", Meaning.AIR_TEMPERATURE, Given.CELSIUS),
                                new WeatherColumn("Dew Point", Meaning.DEW_POINT, Given.CELSIUS),
                                new WeatherColumn("Pressure", Meaning.AIR_PRESSURE, Given.HECTOPASCAL),
                                new WeatherColumn("GHI", Meaning.GLOBAL_HORIZONTAL, Given.WATT_PER_SQUARE_METRE),
                                new WeatherColumn("Wind Speed", Meaning.WIND_SPEED, Given.METRE_PER_SECOND),
                                new WeatherColumn("Wind Direction", Meaning.WIND_DIRECTION, Given.DEGREE)))
                .read(place, "measured year", lines);

        assertThat(weather.isWholeYear()).isTrue();
        assertThat(weather.mean(WeatherQuantity.GLOBAL_HORIZONTAL) * 8.760)
                .as("kWh/m² in the year")
                .isCloseTo(1827, within(1.0));
        assertThat(weather.airPressurePa(0)).isBetween(75_000.0, 80_500.0);
        double direct = 0;
        int at = Arrays.asList(lines.get(2).split(",")).indexOf("DNI");
        for (String line : lines.subList(3, lines.size())) {
            direct += Double.parseDouble(line.split(",")[at]) / 2000;
        }
        assertThat(weather.mean(WeatherQuantity.DIRECT_NORMAL) * 8.760)
                .as("direct sun split off the global comes near what the source says")
                .isCloseTo(direct, within(0.08 * direct));
        assertThat(weather.notices()).extracting(Notice::code).contains("sun-split");
    }

    @Test
    void design_temperatures_of_a_very_cold_place() {
        DesignConditions fargo = DesignConditions.of(Tmy3.read(OpenData.lines("weather-tmy3/fargo-nd-727530.csv.gz")));

        // the handbook's 99.6 % for Fargo is about -29 °C and its 1 % about 31 °C (from memory); a typical year is
        // milder
        assertThat(fargo.heating996C()).isBetween(-30.0, -25.0);
        assertThat(fargo.cooling010C()).isBetween(28.0, 33.0);
        assertThat(fargo.heating996C()).isLessThan(fargo.heating990C());
        assertThat(fargo.cooling004C()).isGreaterThan(fargo.cooling010C()).isGreaterThan(fargo.cooling020C());
    }
}
