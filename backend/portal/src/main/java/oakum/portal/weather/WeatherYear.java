package oakum.portal.weather;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.MonthlyMeans;
import oakum.physics.weather.WeatherQuantity;
import oakum.portal.calculation.AnswerJson.NoticeJson;
import org.jspecify.annotations.Nullable;

/**
 * A weather year as people choose one; its hours stay with the portal.
 *
 * @param hash of its content, as calculations and houses take it: {@code sha256:} and 64 hex digits
 * @param id the same for addresses: the 64 hex digits
 * @param source what it is, as people cite it
 * @param attribution the licence and whom to name; empty where nothing is asked
 * @param start when its first hour begins, in the place's standard time
 * @param wholeYear whether it can follow itself without end
 * @param quantities what it has
 * @param months means of the months it has, January first
 * @param notices what was repaired or assumed
 * @param bundled whether it comes with the portal
 * @param addedBy who added it; null where it comes with the portal
 */
public record WeatherYear(
        String hash,
        String id,
        WeatherPlace place,
        String source,
        String attribution,
        LocalDateTime start,
        int hours,
        boolean wholeYear,
        List<WeatherQuantity> quantities,
        List<MonthlyMeans> months,
        List<NoticeJson> notices,
        boolean bundled,
        @Nullable String addedBy,
        @Nullable Instant addedAt) {

    static final String PREFIX = "sha256:";

    static String id(HourlyWeather weather) {
        return weather.contentHash().substring(PREFIX.length());
    }

    static WeatherYear bundled(HourlyWeather weather) {
        return of(weather, "", true, null, null);
    }

    static WeatherYear added(HourlyWeather weather, String attribution, String by, Instant at) {
        return of(weather, attribution, false, by, at);
    }

    private static WeatherYear of(
            HourlyWeather weather, String attribution, boolean bundled, @Nullable String by, @Nullable Instant at) {
        return new WeatherYear(
                weather.contentHash(),
                id(weather),
                WeatherPlace.of(weather.place()),
                weather.source(),
                attribution,
                weather.start(),
                weather.hours(),
                weather.isWholeYear(),
                WeatherYears.quantities(weather),
                MonthlyMeans.of(weather),
                weather.notices().stream().map(NoticeJson::of).toList(),
                bundled,
                by,
                at);
    }
}
