package oakum.portal.weather;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import oakum.physics.weather.BundledYears;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.SyntheticYear;
import oakum.physics.weather.WeatherQuantity;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The firm's weather years: those that come with the portal and those that were added. */
@Service
public class WeatherYears {
    private static final int MOST_LISTED = 200;
    private static final int LONGEST_TEXT = 500;

    private final WeatherRows rows;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    WeatherYears(WeatherRows rows, Access access, Audit audit, Clock clock) {
        this.rows = rows;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * A year that was brought.
     *
     * @param added false where the same content was there already; {@code year} is then that one
     */
    public record Brought(WeatherYear year, boolean added) {}

    /** By place; those that come with the portal before all others. */
    @Transactional(readOnly = true)
    public Page<WeatherYear> page(@Nullable String cursor, int limit) {
        access.caller();
        int size = Math.max(1, Math.min(MOST_LISTED, limit));
        Page<WeatherYear> page = Cursor.page(
                rows.list(Cursor.sortKey(cursor), size + 1),
                size,
                year -> year.place().name().toLowerCase(Locale.ROOT) + " " + year.id());
        if (cursor != null && !cursor.isEmpty()) {
            return page;
        }
        List<WeatherYear> first = new ArrayList<>();
        BundledYears.all().forEach(weather -> first.add(WeatherYear.bundled(weather)));
        first.addAll(page.items());
        return new Page<>(first, page.next());
    }

    /**
     * One year.
     *
     * @param hash with or without {@code sha256:}
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public WeatherYear get(String hash) {
        access.caller();
        String id = hash.startsWith(WeatherYear.PREFIX) ? hash.substring(WeatherYear.PREFIX.length()) : hash;
        return BundledYears.all().stream()
                .filter(weather -> WeatherYear.id(weather).equals(id))
                .map(WeatherYear::bundled)
                .findFirst()
                .or(() -> rows.find(id))
                .orElseThrow(() -> Problem.notFound("weather year", hash));
    }

    /**
     * Keeps weather under its content; brought again, nothing doubles.
     *
     * @param attribution the licence and whom to name; empty where nothing is asked
     * @throws Problem 403, and 422 where a text is too long
     */
    @Transactional
    public Brought keep(HourlyWeather weather, String attribution) {
        access.requireAnywhere(Permission.KEEP_WEATHER);
        requireText("place", weather.place().name(), 1);
        requireText("source", weather.source(), 1);
        requireText("attribution", attribution, 0);
        String id = WeatherYear.id(weather);
        boolean bundled = BundledYears.all().stream()
                .anyMatch(known -> known.contentHash().equals(weather.contentHash()));
        // as fine as the database keeps it, so that it is answered alike when it is read again
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        WeatherYear year =
                WeatherYear.added(weather, attribution, access.caller().displayName(), now);
        if (bundled || !rows.add(weather, year)) {
            return new Brought(get(id), false);
        }
        audit.record(
                "weather-year-added",
                null,
                "Weather of " + year.place().name() + ", " + year.hours() + " hours: " + year.source() + ".",
                "/api/v1/weather-years/" + id);
        return new Brought(year, true);
    }

    /**
     * Makes a year from monthly normals and keeps it.
     *
     * @throws oakum.physics.calculation.Refused where a month is missing or out of range
     */
    @Transactional
    public Brought keep(NormalsSent normals) {
        access.requireAnywhere(Permission.KEEP_WEATHER);
        HourlyWeather weather = SyntheticYear.of(
                normals.place().place(), normals.source(), new SyntheticYear.Normals(normals.months()));
        return keep(weather, normals.attribution() == null ? "" : normals.attribution());
    }

    static void requireText(String field, String text, int atLeast) {
        if (text.strip().length() < atLeast || text.length() > LONGEST_TEXT) {
            throw Problem.unprocessable(
                    "weather-text", field, "The " + field + " has " + atLeast + " to " + LONGEST_TEXT + " characters.");
        }
    }

    static List<WeatherQuantity> quantities(HourlyWeather weather) {
        return Arrays.stream(WeatherQuantity.values()).filter(weather::has).toList();
    }
}
