package oakum.physics.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import oakum.physics.calculation.Refused;
import org.junit.jupiter.api.Test;

class WeatherShelvesTest {
    /** Another hash means other hours: whatever was computed with them needs a line in the changelog. */
    private static final String COLD_A = "sha256:391dbf97d2792ee15abdd052da20a985d205e5b06284911b1d148879772ea7ee";

    @Test
    void a_bundled_year_is_always_there_and_always_the_same() {
        assertThat(BundledYears.coldA().contentHash()).isEqualTo(COLD_A);
        assertThat(WeatherShelves.find(COLD_A)).containsSame(BundledYears.coldA());
    }

    @Test
    void the_bundled_year_keeps_the_months_it_was_made_from() {
        List<MonthlyMeans> months = MonthlyMeans.of(BundledYears.coldA());

        assertThat(months).extracting(MonthlyMeans::hours).startsWith(744, 672, 744);
        assertThat(months.get(0).temperatureC()).isCloseTo(-10, within(0.01));
        assertThat(months.get(6).temperatureC()).isCloseTo(20, within(0.01));
        // hours that would pass saturation are capped
        assertThat(months.get(0).vapourPressurePa()).isBetween(180.0, 207.6);
        assertThat(months.get(6).vapourPressurePa()).isCloseTo(1682.6, within(40.0));
        assertThat(months.get(6).globalWPerM2()).isCloseTo(260, within(3.0));
        assertThat(months.get(0).precipitationKgPerM2()).isCloseTo(30, within(0.01));
    }

    @Test
    void a_colder_year_keeps_its_relative_humidity() {
        SyntheticYear.Month colder = BundledYears.coldA(-5).months().get(0);

        assertThat(colder.meanTemperatureC()).isEqualTo(-15);
        // over water at -10 and -15 degrees: 286.5 and 191.4 Pa (WMO-No. 8, annex 4.B, from memory)
        assertThat(colder.vapourPressurePa()).isCloseTo(207.5 * 191.4 / 286.5, within(0.3));
    }

    @Test
    void an_open_shelf_is_asked_and_a_closed_one_is_not() {
        HourlyWeather hours = twoHours(7);
        WeatherShelf shelf =
                hash -> Optional.of(hours).filter(w -> w.contentHash().equals(hash));

        WeatherShelves.open(shelf);
        try {
            assertThat(WeatherShelves.find(hours.contentHash())).containsSame(hours);
        } finally {
            WeatherShelves.close(shelf);
        }

        assertThatThrownBy(() -> WeatherShelves.require("weatherHash", hours.contentHash()))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused ->
                                assertThat(refused.violations().get(0).field()).isEqualTo("weatherHash"));
    }

    @Test
    void a_shelf_that_answers_with_other_weather_is_found_out() {
        WeatherShelf liar = hash -> Optional.of(twoHours(8));

        WeatherShelves.open(liar);
        try {
            assertThatThrownBy(() -> WeatherShelves.find(twoHours(9).contentHash()))
                    .isInstanceOf(IllegalStateException.class);
        } finally {
            WeatherShelves.close(liar);
        }
    }

    private static HourlyWeather twoHours(double temperatureC) {
        return new HourlyWeather(
                new Place("Here", 60, 25, 10, 2),
                "two hours",
                HourlyWeather.anyYear(),
                Map.of(
                        WeatherQuantity.AIR_TEMPERATURE, new double[] {temperatureC, temperatureC},
                        WeatherQuantity.VAPOUR_PRESSURE, new double[] {600, 600}),
                List.of());
    }
}
