package oakum.physics.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.weather.SyntheticYear.Month;
import oakum.physics.weather.SyntheticYear.Normals;
import org.junit.jupiter.api.Test;

class SyntheticYearTest {
    private static final Place PLACE = new Place("Cold inland", 44.9, -93.2, 255, -6);
    private static final double[] MEAN = {-9.2, -6.4, .3, 8.1, 15.0, 20.3, 23.0, 21.6, 16.6, 9.3, 1.3, -6.5};
    private static final double[] VAPOUR = {210, 250, 400, 600, 980, 1500, 1800, 1750, 1270, 780, 480, 290};
    private static final double[] SUN = {70, 115, 165, 205, 245, 270, 275, 235, 180, 120, 75, 57};

    private static List<Month> months(double deviationK) {
        List<Month> months = new ArrayList<>();
        for (int m = 0; m < 12; m++) {
            months.add(new Month(MEAN[m], 10, VAPOUR[m], deviationK, SUN[m], 4.0, 60.0));
        }
        return months;
    }

    private static HourlyWeather year(double deviationK) {
        return SyntheticYear.of(PLACE, "made up", new Normals(months(deviationK)));
    }

    private static double monthly(HourlyWeather weather, WeatherQuantity quantity, int month) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < weather.hours(); i++) {
            if (weather.time(i).getMonthValue() == month + 1) {
                sum += weather.value(quantity, i);
                count++;
            }
        }
        return sum / count;
    }

    @Test
    void keeps_every_monthly_mean() {
        for (HourlyWeather weather : List.of(year(0), year(5))) {
            for (int m = 0; m < 12; m++) {
                assertThat(monthly(weather, WeatherQuantity.AIR_TEMPERATURE, m)).isCloseTo(MEAN[m], within(0.05));
                assertThat(monthly(weather, WeatherQuantity.GLOBAL_HORIZONTAL, m))
                        .isCloseTo(SUN[m], within(1.0));
                assertThat(monthly(weather, WeatherQuantity.PRECIPITATION, m) * 24 * YearCurve.daysOf(m))
                        .isCloseTo(60, within(1e-9));
                assertThat(monthly(weather, WeatherQuantity.WIND_SPEED, m)).isCloseTo(4, within(1e-9));
            }
        }
        for (int m = 0; m < 12; m++) {
            assertThat(monthly(year(0), WeatherQuantity.VAPOUR_PRESSURE, m))
                    .isCloseTo(VAPOUR[m], within(0.03 * VAPOUR[m]));
        }
    }

    @Test
    void swings_by_the_daily_range_with_the_warmest_hour_in_the_early_afternoon() {
        HourlyWeather weather = year(0);
        int july = 190 * 24;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int warmest = 0;
        for (int i = july; i < july + 24; i++) {
            low = Math.min(low, weather.temperatureC(i));
            if (weather.temperatureC(i) > high) {
                high = weather.temperatureC(i);
                warmest = i - july;
            }
        }
        assertThat(high - low).isCloseTo(10, within(0.01));
        assertThat(warmest).isBetween(14, 15);
    }

    @Test
    void is_the_same_every_time_says_what_it_is_and_differs_with_its_normals() {
        assertThat(year(5).contentHash()).isEqualTo(year(5).contentHash()).isNotEqualTo(year(4).contentHash());
        assertThat(year(5).notices()).extracting(Notice::code).contains("synthetic-year", "sun-split");
        assertThat(year(5).source()).startsWith("Synthetic year");
        assertThat(DesignConditions.of(year(5)).heating996C())
                .as("good and bad days widen the year")
                .isLessThan(DesignConditions.of(year(0)).heating996C() - 3);
    }

    @Test
    void eleven_months_or_a_month_without_wind_are_refused() {
        assertThatThrownBy(() ->
                        SyntheticYear.of(PLACE, "made up", new Normals(months(0).subList(0, 11))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("11 rows");
        List<Month> gap = months(0);
        Month may = gap.get(4);
        gap.set(4, new Month(may.meanTemperatureC(), 10, 980, 0, 245.0, null, 60.0));
        assertThatThrownBy(() -> SyntheticYear.of(PLACE, "made up", new Normals(gap)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("months[4].windMPerS")
                .hasMessageContaining("windMPerS");
        assertThatThrownBy(() -> SyntheticYear.of(
                        PLACE,
                        "made up",
                        new Normals(Collections.nCopies(12, new Month(80, 10, 980, 0, null, null, null)))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("45 Cel");
    }

    @Test
    void the_houses_own_readings_become_hours() {
        long first = LocalDateTime.of(2026, 1, 10, 0, 0).toEpochSecond(PLACE.offset());
        int n = 6 * 24 * 4;
        long[] times = new long[n];
        double[] t = new double[n];
        double[] rh = new double[n];
        long[] humidityTimes = new long[n];
        for (int i = 0; i < n; i++) {
            times[i] = first + 600L * i;
            humidityTimes[i] = times[i] + 60;
            t[i] = -5;
            rh[i] = 0.75;
        }
        HourlyWeather weather = HouseReadings.hourly(
                PLACE, "sensors of the house", new TimedValues(times, t), new TimedValues(humidityTimes, rh), Map.of());

        assertThat(weather.start()).isEqualTo(LocalDateTime.of(2026, 1, 10, 0, 0));
        assertThat(weather.hours()).isEqualTo(96);
        assertThat(weather.relativeHumidityOverWater(50)).isCloseTo(0.75, within(1e-9));
        rh[7] = 1.3;
        assertThatThrownBy(() -> HouseReadings.hourly(
                        PLACE, "sensors", new TimedValues(times, t), new TimedValues(humidityTimes, rh), Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("reading 7")
                .hasMessageContaining("0 to 1.1");
    }
}
