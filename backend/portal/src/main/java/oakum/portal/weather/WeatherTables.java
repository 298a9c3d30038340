package oakum.portal.weather;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import oakum.physics.weather.WeatherTable;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** The firm's column maps of weather tables, each under its name. */
@Service
class WeatherTables {
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{0,63}");

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Access access;
    private final Audit audit;

    WeatherTables(JdbcClient jdbc, JsonMapper json, Access access, Audit audit) {
        this.jdbc = jdbc;
        this.json = json;
        this.access = access;
        this.audit = audit;
    }

    /** A map as it is kept. */
    record KeptTable(WeatherTable map, long version) {}

    @Transactional(readOnly = true)
    List<String> names() {
        access.caller();
        return jdbc.sql("select name from weather.table_map order by name")
                .query(String.class)
                .list();
    }

    /**
     * One map.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    KeptTable get(String name) {
        access.caller();
        return find(name).orElseThrow(() -> Problem.notFound("column map of weather", name));
    }

    /**
     * Keeps a map; a first one needs no {@code If-Match}.
     *
     * @throws Problem 403, 422 for a name that cannot be, 412 and 428 as everywhere
     */
    @Transactional
    KeptTable put(String name, WeatherTable map, @Nullable String ifMatch) {
        access.requireAnywhere(Permission.KEEP_WEATHER);
        if (!NAME.matcher(name).matches()) {
            throw Problem.unprocessable(
                    "column-map", "name", "A map's name has 1 to 64 lower-case letters, digits, dots and hyphens.");
        }
        Optional<KeptTable> before = find(name);
        before.ifPresent(kept -> EntityTag.require(ifMatch, kept.version()));
        int kept = jdbc.sql("""
                        insert into weather.table_map (name, map) values (?, ?::jsonb)
                        on conflict (name) do update set map = excluded.map, version = weather.table_map.version + 1
                        where weather.table_map.version = ?""")
                .params(
                        name,
                        json.writeValueAsString(map),
                        before.map(KeptTable::version).orElse(-1L))
                .update();
        if (kept == 0) {
            // somebody kept one between our reading and our writing
            EntityTag.require(ifMatch, find(name).orElseThrow().version());
        }
        audit.record(
                "weather-table-kept", null, "Column map of weather " + name + ".", "/api/v1/weather-tables/" + name);
        return find(name).orElseThrow();
    }

    private Optional<KeptTable> find(String name) {
        return jdbc.sql("select map, version from weather.table_map where name = ?")
                .param(name)
                .query((row, n) ->
                        new KeptTable(json.readValue(row.getString("map"), WeatherTable.class), row.getLong("version")))
                .optional();
    }
}
