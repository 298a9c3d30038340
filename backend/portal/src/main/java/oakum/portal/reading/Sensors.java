package oakum.portal.reading;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The sensors of a house. They are never deleted: their readings would lose their meaning. */
@Service
public class Sensors {
    private static final Pattern KEY = Pattern.compile("[a-z0-9][a-z0-9.-]{0,63}");

    private final JdbcClient jdbc;
    private final Access access;
    private final Audit audit;

    Sensors(JdbcClient jdbc, Access access, Audit audit) {
        this.jdbc = jdbc;
        this.access = access;
        this.audit = audit;
    }

    /** All sensors of a house by key. */
    @Transactional(readOnly = true)
    public List<Sensor> list(String house) {
        access.require(Permission.VIEW_READINGS, house);
        return jdbc.sql("select * from reading.sensor where house = ? order by key")
                .param(house)
                .query(Sensors::sensor)
                .list();
    }

    /**
     * One sensor.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public Sensor get(String house, String key) {
        access.require(Permission.VIEW_READINGS, house);
        return find(house, key).orElseThrow(() -> Problem.notFound("sensor", key));
    }

    /**
     * Makes a sensor known.
     *
     * @throws Problem 409 where the house has one of this key, 422 where a member cannot be
     */
    @Transactional
    public Sensor add(String house, NewSensor sensor) {
        access.require(Permission.MANAGE_SENSORS, house);
        check(sensor);
        int made = jdbc.sql("""
                        insert into reading.sensor
                            (house, key, label, property, room, place, instrument, accuracy, sample_interval_s)
                        values (:house, :key, :label, :property, :room, :place, :instrument, :accuracy, :interval)
                        on conflict do nothing""").params(said(house, sensor)).update();
        if (made == 0) {
            throw Problem.conflict("sensor-exists", "This house already has a sensor \"" + sensor.key() + "\".");
        }
        audit.record(
                "sensor-added",
                house,
                "Sensor " + sensor.key() + ", " + sensor.property().label() + ".");
        return find(house, sensor.key()).orElseThrow();
    }

    /**
     * Corrects what is said of a sensor; its key and what it observes stay.
     *
     * @throws Problem 409 for another property, 412 and 428 as everywhere
     */
    @Transactional
    public Sensor change(String house, String key, NewSensor sensor, @Nullable String ifMatch) {
        access.require(Permission.MANAGE_SENSORS, house);
        check(sensor);
        Sensor before = find(house, key).orElseThrow(() -> Problem.notFound("sensor", key));
        EntityTag.require(ifMatch, before.version());
        if (!before.key().equals(sensor.key()) || before.property() != sensor.property()) {
            throw Problem.conflict(
                    "sensor-fixed",
                    "A sensor keeps its key and what it observes, or its readings would change their meaning; add another sensor.");
        }
        int changed = jdbc.sql("""
                        update reading.sensor set label = :label, room = :room, place = :place,
                            instrument = :instrument, accuracy = :accuracy, sample_interval_s = :interval,
                            version = version + 1
                        where house = :house and key = :key and version = :version""")
                .params(said(house, sensor))
                .param("version", before.version())
                .update();
        if (changed == 0) {
            EntityTag.require(ifMatch, before.version() + 1);
        }
        audit.record("sensor-changed", house, "Sensor " + key + ", " + sensor.label() + ".");
        return find(house, key).orElseThrow();
    }

    /** The sensors of a house for those who bring or compute readings; asks nobody. */
    Map<String, KnownSensor> known(String house) {
        return jdbc
                .sql("select id, key, property from reading.sensor where house = ?")
                .param(house)
                .query((row, n) -> new KnownSensor(
                        row.getInt("id"), row.getString("key"), ObservedProperty.of(row.getString("property"))))
                .list()
                .stream()
                .collect(Collectors.toMap(KnownSensor::key, Function.identity()));
    }

    private Optional<Sensor> find(String house, String key) {
        return jdbc.sql("select * from reading.sensor where house = ? and key = ?")
                .params(house, key)
                .query(Sensors::sensor)
                .optional();
    }

    private static Map<String, @Nullable Object> said(String house, NewSensor sensor) {
        Map<String, @Nullable Object> said = new HashMap<>();
        said.put("house", house);
        said.put("key", sensor.key());
        said.put("label", sensor.label());
        said.put("property", sensor.property().id());
        said.put("room", sensor.room());
        said.put("place", sensor.place());
        said.put("instrument", sensor.instrument());
        said.put("accuracy", sensor.accuracy());
        said.put("interval", sensor.sampleIntervalS());
        return said;
    }

    private static void check(NewSensor sensor) {
        if (!KEY.matcher(sensor.key()).matches()) {
            throw Problem.unprocessable(
                    "sensor", "key", "A sensor's key has 1 to 64 lower-case letters, digits, dots and hyphens.");
        }
        if (sensor.label().isBlank() || sensor.label().length() > 200) {
            throw Problem.unprocessable("sensor", "label", "A sensor's label has 1 to 200 characters.");
        }
        if (sensor.accuracy() != null && !(sensor.accuracy() >= 0 && sensor.accuracy() < 1e9)) {
            throw Problem.unprocessable("sensor", "accuracy", "An instrument's stated error is 0 or more.");
        }
        if (sensor.sampleIntervalS() != null && (sensor.sampleIntervalS() < 1 || sensor.sampleIntervalS() > 86_400)) {
            throw Problem.unprocessable("sensor", "sampleIntervalS", "A sample interval is 1 to 86400 seconds.");
        }
    }

    private static Sensor sensor(ResultSet row, int number) throws SQLException {
        ObservedProperty property = ObservedProperty.of(row.getString("property"));
        return new Sensor(
                row.getString("key"),
                row.getString("label"),
                property,
                property.unit().ucum(),
                row.getString("room"),
                row.getString("place"),
                row.getString("instrument"),
                row.getObject("accuracy", Double.class),
                row.getObject("sample_interval_s", Integer.class),
                row.getLong("version"));
    }
}
