package oakum.portal.weather;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import oakum.physics.calculation.Notice;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.MonthlyMeans;
import oakum.physics.weather.Place;
import oakum.physics.weather.WeatherQuantity;
import oakum.portal.calculation.AnswerJson.NoticeJson;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Weather years in the database. */
@Repository
class WeatherRows {
    private static final String SHOWN = """
            hash, place, latitude_deg, longitude_deg, altitude_m, standard_offset_h, source, attribution, start, hours,
            whole_year, quantities, months, notices, added_by, added_at""";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    WeatherRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** False where it is there already. */
    boolean add(HourlyWeather weather, WeatherYear year) {
        String[] quantities = year.quantities().stream().map(Enum::name).toArray(String[]::new);
        return jdbc.sql("""
                        insert into weather.year (hash, place, latitude_deg, longitude_deg, altitude_m,
                            standard_offset_h, source, attribution, start, hours, whole_year, quantities, packed, months,
                            notices, added_by, added_at)
                        values (:hash, :place, :latitude, :longitude, :altitude, :offset, :source, :attribution, :start,
                            :hours, :whole, :quantities, :packed, :months::jsonb, :notices::jsonb, :by, :at)
                        on conflict (hash) do nothing""")
                        .param("hash", year.id())
                        .param("place", year.place().name())
                        .param("latitude", year.place().latitudeDeg())
                        .param("longitude", year.place().longitudeDeg())
                        .param("altitude", year.place().altitudeM())
                        .param("offset", year.place().standardOffsetH())
                        .param("source", year.source())
                        .param("attribution", year.attribution())
                        .param("start", year.start())
                        .param("hours", year.hours())
                        .param("whole", year.wholeYear())
                        .param("quantities", quantities)
                        .param("packed", PackedHours.pack(weather, year.quantities()))
                        .param("months", json.writeValueAsString(year.months()))
                        .param("notices", json.writeValueAsString(weather.notices()))
                        .param("by", year.addedBy())
                        .param("at", Timestamp.from(Objects.requireNonNull(year.addedAt())))
                        .update()
                == 1;
    }

    Optional<WeatherYear> find(String id) {
        return jdbc.sql("select " + SHOWN + " from weather.year where hash = ?")
                .param(id)
                .query(this::year)
                .optional();
    }

    /** By place, from the one after a sort key on. */
    List<WeatherYear> list(@Nullable String after, int most) {
        return jdbc.sql("select " + SHOWN + """
                         from weather.year where (lower(place) || ' ' || hash) collate "C" > ?
                        order by (lower(place) || ' ' || hash) collate "C" limit ?""")
                .params(after == null ? "" : after, most)
                .query(this::year)
                .list();
    }

    /** The hours themselves. */
    Optional<HourlyWeather> hours(String id) {
        return jdbc.sql("select " + SHOWN + ", packed from weather.year where hash = ?")
                .param(id)
                .query(this::weather)
                .optional();
    }

    private HourlyWeather weather(ResultSet row, int n) throws SQLException {
        return new HourlyWeather(
                place(row),
                row.getString("source"),
                row.getObject("start", LocalDateTime.class),
                PackedHours.unpack(row.getBytes("packed"), quantities(row), row.getInt("hours")),
                List.of(json.readValue(row.getString("notices"), Notice[].class)));
    }

    private WeatherYear year(ResultSet row, int n) throws SQLException {
        return new WeatherYear(
                WeatherYear.PREFIX + row.getString("hash"),
                row.getString("hash"),
                WeatherPlace.of(place(row)),
                row.getString("source"),
                row.getString("attribution"),
                row.getObject("start", LocalDateTime.class),
                row.getInt("hours"),
                row.getBoolean("whole_year"),
                quantities(row),
                List.of(json.readValue(row.getString("months"), MonthlyMeans[].class)),
                Arrays.stream(json.readValue(row.getString("notices"), Notice[].class))
                        .map(NoticeJson::of)
                        .toList(),
                false,
                row.getString("added_by"),
                row.getTimestamp("added_at").toInstant());
    }

    private static Place place(ResultSet row) throws SQLException {
        return new Place(
                row.getString("place"),
                row.getDouble("latitude_deg"),
                row.getDouble("longitude_deg"),
                row.getDouble("altitude_m"),
                row.getDouble("standard_offset_h"));
    }

    private static List<WeatherQuantity> quantities(ResultSet row) throws SQLException {
        return Arrays.stream((String[]) row.getArray("quantities").getArray())
                .map(WeatherQuantity::valueOf)
                .toList();
    }
}
