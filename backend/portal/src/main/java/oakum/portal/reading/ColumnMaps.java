package oakum.portal.reading;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
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

/** The column maps of a house, each under its name. */
@Service
public class ColumnMaps {
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{0,63}");

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Access access;
    private final Audit audit;
    private final Sensors sensors;

    ColumnMaps(JdbcClient jdbc, JsonMapper json, Access access, Audit audit, Sensors sensors) {
        this.jdbc = jdbc;
        this.json = json;
        this.access = access;
        this.audit = audit;
        this.sensors = sensors;
    }

    /** A map as it is kept. */
    public record KeptColumnMap(String name, ColumnMap map, long version) {}

    @Transactional(readOnly = true)
    public List<String> names(String house) {
        access.require(Permission.VIEW_READINGS, house);
        return jdbc.sql("select name from reading.column_map where house = ? order by name")
                .param(house)
                .query(String.class)
                .list();
    }

    /**
     * One map.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public KeptColumnMap get(String house, String name) {
        access.require(Permission.VIEW_READINGS, house);
        return find(house, name).orElseThrow(() -> Problem.notFound("column map", name));
    }

    /**
     * Keeps a map; a first one needs no {@code If-Match}.
     *
     * @throws Problem 422 naming the member that cannot be, 412 and 428 as everywhere
     */
    @Transactional
    public KeptColumnMap put(String house, String name, ColumnMap map, @Nullable String ifMatch) {
        access.require(Permission.MANAGE_SENSORS, house);
        if (!NAME.matcher(name).matches()) {
            throw Problem.unprocessable(
                    "column-map", "name", "A map's name has 1 to 64 lower-case letters, digits, dots and hyphens.");
        }
        TableForm.of(map, sensors.known(house));
        Optional<KeptColumnMap> before = find(house, name);
        before.ifPresent(kept -> EntityTag.require(ifMatch, kept.version()));
        int kept = jdbc.sql("""
                        insert into reading.column_map (house, name, map) values (?, ?, ?::jsonb)
                        on conflict (house, name) do update set map = excluded.map,
                            version = reading.column_map.version + 1
                        where reading.column_map.version = ?""")
                .params(
                        house,
                        name,
                        json.writeValueAsString(map),
                        before.map(KeptColumnMap::version).orElse(-1L))
                .update();
        if (kept == 0) {
            // somebody kept one between our reading and our writing
            EntityTag.require(ifMatch, find(house, name).orElseThrow().version());
        }
        audit.record("column-map-kept", house, "Column map " + name + ".");
        return find(house, name).orElseThrow();
    }

    private Optional<KeptColumnMap> find(String house, String name) {
        return jdbc.sql("select name, map, version from reading.column_map where house = ? and name = ?")
                .params(house, name)
                .query((row, n) -> new KeptColumnMap(
                        row.getString("name"),
                        json.readValue(row.getString("map"), ColumnMap.class),
                        row.getLong("version")))
                .optional();
    }
}
