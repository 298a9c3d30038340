package oakum.physics.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import oakum.physics.moistair.MoistAir;
import org.jspecify.annotations.Nullable;

/**
 * A month of a weather's hours in the mean; hours of the same month in several years are taken together.
 *
 * @param month 1 to 12
 * @param hours how many hours it is the mean of
 * @param relativeHumidityFraction of the mean vapour pressure at the mean temperature, over water
 * @param globalWPerM2 mean global irradiance on level ground, day and night; null where the weather has none
 * @param windMPerS mean wind speed; null where the weather has none
 * @param precipitationKgPerM2 of the whole month, at its mean rate; null where the weather has none
 */
public record MonthlyMeans(
        int month,
        int hours,
        double temperatureC,
        double vapourPressurePa,
        double relativeHumidityFraction,
        @Nullable Double globalWPerM2,
        @Nullable Double windMPerS,
        @Nullable Double precipitationKgPerM2) {
    private static final int[] DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    /** The months that have hours, January first. */
    public static List<MonthlyMeans> of(HourlyWeather weather) {
        int[] monthOf = IntStream.range(0, weather.hours())
                .map(hour -> weather.time(hour).getMonthValue())
                .toArray();
        List<MonthlyMeans> months = new ArrayList<>();
        for (int month = 1; month <= 12; month++) {
            int wanted = month;
            int[] hours = IntStream.range(0, weather.hours())
                    .filter(hour -> monthOf[hour] == wanted)
                    .toArray();
            if (hours.length > 0) {
                months.add(of(weather, month, hours));
            }
        }
        return months;
    }

    private static MonthlyMeans of(HourlyWeather weather, int month, int[] hours) {
        double temperatureC = mean(weather, WeatherQuantity.AIR_TEMPERATURE, hours);
        double vapourPressurePa = mean(weather, WeatherQuantity.VAPOUR_PRESSURE, hours);
        Double rain = optional(weather, WeatherQuantity.PRECIPITATION, hours);
        return new MonthlyMeans(
                month,
                hours.length,
                temperatureC,
                vapourPressurePa,
                vapourPressurePa / MoistAir.saturationPressureOverWaterPa(temperatureC),
                optional(weather, WeatherQuantity.GLOBAL_HORIZONTAL, hours),
                optional(weather, WeatherQuantity.WIND_SPEED, hours),
                rain == null ? null : rain * 24 * DAYS[month - 1]);
    }

    private static @Nullable Double optional(HourlyWeather weather, WeatherQuantity quantity, int[] hours) {
        return weather.has(quantity) ? mean(weather, quantity, hours) : null;
    }

    private static double mean(HourlyWeather weather, WeatherQuantity quantity, int[] hours) {
        return IntStream.of(hours)
                .mapToDouble(hour -> weather.value(quantity, hour))
                .average()
                .orElseThrow();
    }
}
