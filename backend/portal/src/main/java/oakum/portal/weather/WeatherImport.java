package oakum.portal.weather;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.List;
import java.util.concurrent.Semaphore;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.Place;
import oakum.physics.weather.Tmy3;
import oakum.physics.weather.WeatherTable;
import oakum.portal.http.Problem;
import oakum.portal.http.TextBody;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import oakum.portal.weather.WeatherYears.Brought;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Service;

/** Takes tables of weather in, each as a whole or not at all. */
@Service
class WeatherImport {
    private final WeatherYears years;
    private final WeatherTables tables;
    private final Access access;
    private final long limitBytes;
    /** A table is in memory while it is read. */
    private final Semaphore places = new Semaphore(2);

    WeatherImport(
            WeatherYears years,
            WeatherTables tables,
            Access access,
            @Value("${oakum.weather.body-limit-bytes:60000000}") long limitBytes) {
        this.years = years;
        this.tables = tables;
        this.access = access;
        this.limitBytes = limitBytes;
    }

    /** What a table's own lines do not say. */
    record Said(
            @Nullable String place,
            @Nullable Double latitudeDeg,
            @Nullable Double longitudeDeg,
            @Nullable Double altitudeM,
            @Nullable Double standardOffsetH,
            @Nullable String source) {

        Place asPlace() {
            return new Place(
                    needed("place", place),
                    needed("latitudeDeg", latitudeDeg),
                    needed("longitudeDeg", longitudeDeg),
                    needed("altitudeM", altitudeM),
                    needed("standardOffsetH", standardOffsetH));
        }

        private static <T> T needed(String parameter, @Nullable T value) {
            if (value == null) {
                throw new Problem(
                                HttpStatus.BAD_REQUEST,
                                "parameter-missing",
                                "A table does not say where it was measured: add the parameter " + parameter + ".")
                        .with("field", parameter);
            }
            return value;
        }

        boolean isNothing() {
            return place == null
                    && latitudeDeg == null
                    && longitudeDeg == null
                    && altitudeM == null
                    && standardOffsetH == null
                    && source == null;
        }
    }

    /**
     * Takes one table in.
     *
     * @param format {@code tmy3}, or null with a table
     * @param table the name of a column map, or null with a format
     * @throws Problem 400 where the body or a parameter cannot be read, 404 without such a map, 413 over the limit
     * @throws oakum.physics.calculation.Refused naming line, column, value and range
     */
    Brought bring(
            @Nullable String format,
            @Nullable String table,
            Said said,
            @Nullable String attribution,
            InputStream body,
            long announcedBytes,
            Charset charset) {
        access.requireAnywhere(Permission.KEEP_WEATHER);
        if ((format == null) == (table == null) || (format != null && !format.equals("tmy3"))) {
            throw new Problem(
                            HttpStatus.BAD_REQUEST,
                            "parameter-malformed",
                            "Say how the table is read: format=tmy3, or table= with the name of a column map.")
                    .with("field", "format");
        }
        if (format != null && !said.isNothing()) {
            throw new Problem(
                            HttpStatus.BAD_REQUEST,
                            "parameter-malformed",
                            "A file of format tmy3 says itself where it was measured and what it is; leave place and"
                                    + " source out.")
                    .with("field", "place");
        }
        if (announcedBytes > limitBytes) {
            throw TextBody.tooLarge(limitBytes);
        }
        WeatherTable map = table == null ? null : tables.get(table).map();
        if (!places.tryAcquire()) {
            throw new Problem(
                    HttpStatus.SERVICE_UNAVAILABLE,
                    "busy",
                    "Too many files are coming in at once. Nothing of this one was kept; send it again in a minute.");
        }
        try {
            HourlyWeather weather = map == null
                    ? Tmy3.read(lines(body, charset))
                    : map.read(said.asPlace(), Said.needed("source", said.source()), lines(body, charset));
            return years.keep(weather, attribution == null ? "" : attribution);
        } finally {
            places.release();
        }
    }

    private List<String> lines(InputStream body, Charset charset) {
        try (BufferedReader text = new BufferedReader(TextBody.open(body, limitBytes, charset))) {
            return text.lines().toList();
        } catch (IOException | UncheckedIOException e) {
            Problem problem = TextBody.problem(e, limitBytes);
            throw problem != null ? problem : new UncheckedIOException(new IOException(e));
        }
    }
}
