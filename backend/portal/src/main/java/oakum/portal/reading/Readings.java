package oakum.portal.reading;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Houses;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Gives readings back. Readings tell how people live: every look by a person is written to the audit trail. */
@Service
public class Readings {
    private static final long HOUR = 3_600;
    private static final long DAY = 86_400;
    /** Lengths that divide an hour, a day or a week, so that buckets start at times that people read. */
    private static final long[] LENGTHS_S = {
        1, 5, 10, 30, 60, 120, 300, 600, 900, 1_800, HOUR, 2 * HOUR, 3 * HOUR, 4 * HOUR, 6 * HOUR, 12 * HOUR, DAY,
        2 * DAY, 7 * DAY, 14 * DAY, 28 * DAY, 84 * DAY, 364 * DAY
    };

    private static final LocalDate A_MONDAY = LocalDate.of(2000, 1, 3);

    private final JdbcClient jdbc;
    private final JdbcTemplate template;
    private final Sensors sensors;
    private final Houses houses;
    private final HouseRecord record;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Readings(
            JdbcClient jdbc,
            JdbcTemplate template,
            Sensors sensors,
            Houses houses,
            HouseRecord record,
            Access access,
            Audit audit,
            Clock clock) {
        this.jdbc = jdbc;
        this.template = template;
        this.sensors = sensors;
        this.houses = houses;
        this.record = record;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Buckets for a chart.
     *
     * @param keys one to twelve sensors
     * @param from null for seven days before {@code to}
     * @param to null for now
     * @param points at most about this many buckets, 1 to 5000
     * @param persistence whether to count how long each sensor stayed beyond the limit of its rule
     * @throws Problem 404 for a sensor that is not there, 422 for a span or a number of points that cannot be
     */
    @Transactional
    public ReadingSeries series(
            String house,
            List<String> keys,
            @Nullable Instant from,
            @Nullable Instant to,
            int points,
            boolean persistence) {
        access.require(Permission.VIEW_READINGS, house);
        Instant end = to == null ? clock.instant() : to;
        Instant start = from == null ? end.minus(Duration.ofDays(7)) : from;
        check(keys, start, end, points);
        ZoneId zone = ZoneId.of(houses.find(house).timeZone());
        Buckets buckets = Buckets.of(start, end, points, zone);
        Map<String, KnownSensor> known = sensors.known(house);
        List<ReadingSeries.SensorSeries> series = new ArrayList<>();
        for (String key : keys) {
            Sensor sensor = sensors.get(house, key);
            series.add(new ReadingSeries.SensorSeries(
                    sensor,
                    buckets(known(known, key), buckets),
                    persistence ? persistence(sensor, known(known, key), start, end) : null,
                    persistence ? humidityLimits(house, sensor, known, buckets) : List.of()));
        }
        audit.record(
                "readings-looked-at",
                house,
                String.join(", ", keys) + " from " + buckets.from() + " to " + buckets.to() + ".");
        return new ReadingSeries(
                buckets.from(),
                buckets.to(),
                buckets.lengthS(),
                zone.getId(),
                buckets.hourly() ? "hours" : "readings",
                series);
    }

    /**
     * The fingerprint of a series: a proof that rests on readings keeps it, and so can tell that they are others now.
     *
     * @param count how many readings
     * @param hash {@code sha256:} over time and value of each in order of time
     */
    public record SeriesHash(String sensor, Instant from, Instant to, long count, String hash) {}

    /** Computes the fingerprint of what is kept of a sensor from {@code from} until before {@code to}. */
    @Transactional(readOnly = true)
    public SeriesHash hash(String house, String key, Instant from, Instant to) {
        access.require(Permission.VIEW_READINGS, house);
        check(List.of(key), from, to, 1);
        MessageDigest digest = sha256();
        ByteBuffer buffer = ByteBuffer.allocate(12);
        long[] count = {0};
        each(known(sensors.known(house), key), from, to, (at, value) -> {
            buffer.clear();
            buffer.putLong(at.getEpochSecond() * 1_000_000 + at.getNano() / 1_000)
                    .putFloat(value);
            digest.update(buffer.array());
            count[0]++;
        });
        return new SeriesHash(
                key, from, to, count[0], "sha256:" + HexFormat.of().formatHex(digest.digest()));
    }

    /** Two sensors read at the same instant. */
    public record Pair(Instant at, double first, double second) {}

    /**
     * Two sensors of a house side by side, for a computation: only instants at which both have a reading.
     *
     * @param from the first instant
     * @param to the first instant after
     */
    @Transactional(readOnly = true)
    public List<Pair> pairs(String house, String first, String second, Instant from, Instant to) {
        access.require(Permission.VIEW_READINGS, house);
        Map<String, KnownSensor> known = sensors.known(house);
        return jdbc.sql("""
                        select a.at, a.value as first, b.value as second
                        from reading.reading a join reading.reading b on b.sensor_id = ? and b.at = a.at
                        where a.sensor_id = ? and a.at >= ? and a.at < ? order by a.at""")
                .params(known(known, second).id(), known(known, first).id(), Timestamp.from(from), Timestamp.from(to))
                .query((row, n) ->
                        new Pair(row.getTimestamp("at").toInstant(), row.getFloat("first"), row.getFloat("second")))
                .list();
    }

    /** What the record allows indoors at the cold outside of each bucket; empty where there is no curve or no cold read. */
    private List<ReadingSeries.LimitPoint> humidityLimits(
            String house, Sensor sensor, Map<String, KnownSensor> known, Buckets buckets) {
        if (sensor.property() != ObservedProperty.RELATIVE_HUMIDITY || PersistenceRule.of(sensor) != null) {
            return List.of();
        }
        Map<Double, Double> points = new HashMap<>();
        record.parts(house)
                .moisture()
                .limits()
                .forEach(limit -> points.put(limit.outdoorC(), limit.relativeHumidityFraction()));
        Sensor outdoors = sensors.list(house).stream()
                .filter(s -> s.property() == ObservedProperty.AIR_TEMPERATURE && s.room() == null)
                .findFirst()
                .orElse(null);
        if (points.isEmpty() || outdoors == null) {
            return List.of();
        }
        HumidityCurve curve = new HumidityCurve(points);
        return buckets(known(known, outdoors.key()), buckets).stream()
                .map(bucket -> new ReadingSeries.LimitPoint(bucket.at(), curve.at(bucket.mean())))
                .toList();
    }

    private @Nullable Persistence persistence(Sensor sensor, KnownSensor known, Instant from, Instant to) {
        PersistenceRule rule = PersistenceRule.of(sensor);
        if (rule == null) {
            return null;
        }
        Persistence.Count count = new Persistence.Count(rule);
        each(known, from, to, count::take);
        return count.done();
    }

    private interface EachReading {
        void take(Instant at, float value);
    }

    private void each(KnownSensor sensor, Instant from, Instant to, EachReading reader) {
        JdbcTemplate streaming = new JdbcTemplate(java.util.Objects.requireNonNull(template.getDataSource()));
        streaming.setFetchSize(5_000);
        streaming.query(
                "select at, value from reading.reading where sensor_id = ? and at >= ? and at < ? order by at",
                row -> {
                    reader.take(row.getTimestamp("at").toInstant(), row.getFloat("value"));
                },
                sensor.id(),
                Timestamp.from(from),
                Timestamp.from(to));
    }

    private List<ReadingSeries.ReadingBucket> buckets(KnownSensor sensor, Buckets buckets) {
        String column = buckets.hourly() ? "hour" : "at";
        String bin = buckets.lengthS() >= DAY
                ? "date_bin(make_interval(secs => :length), " + column
                        + " at time zone :zone, timestamp '2000-01-03') at time zone :zone"
                : "date_bin(make_interval(secs => :length), " + column + ", :origin)";
        String values = buckets.hourly()
                ? "sum(count) as count, min(min) as min, sum(mean * count) / sum(count) as mean, max(max) as max from reading.hour"
                : "count(*) as count, min(value) as min, avg(value::float8) as mean, max(value) as max from reading.reading";
        return jdbc.sql("select " + bin + " as bucket, " + values + " where sensor_id = :sensor and " + column
                        + " >= :from and " + column + " < :to group by 1 order by 1")
                .param("length", buckets.lengthS())
                .param("zone", buckets.zone().getId())
                .param("origin", Timestamp.from(buckets.from()))
                .param("sensor", sensor.id())
                .param("from", Timestamp.from(buckets.from()))
                .param("to", Timestamp.from(buckets.to()))
                .query(Readings::bucket)
                .list();
    }

    private static ReadingSeries.ReadingBucket bucket(ResultSet row, int number) throws SQLException {
        return new ReadingSeries.ReadingBucket(
                row.getTimestamp("bucket").toInstant(),
                row.getLong("count"),
                row.getDouble("min"),
                row.getDouble("mean"),
                row.getDouble("max"));
    }

    /** Which buckets answer a question: whole ones, at times that people read. */
    record Buckets(Instant from, Instant to, long lengthS, ZoneId zone) {
        static Buckets of(Instant from, Instant to, int points, ZoneId zone) {
            long wanted = Math.max(1, -Math.floorDiv(-Duration.between(from, to).toSeconds(), points));
            long length = LENGTHS_S[LENGTHS_S.length - 1];
            for (int i = LENGTHS_S.length - 1; i >= 0 && LENGTHS_S[i] >= wanted; i--) {
                length = LENGTHS_S[i];
            }
            return length >= DAY ? days(from, to, length, zone) : within(from, to, length, zone);
        }

        boolean hourly() {
            return lengthS >= HOUR;
        }

        private static Buckets within(Instant from, Instant to, long length, ZoneId zone) {
            Instant midnight =
                    from.atZone(zone).toLocalDate().atStartOfDay(zone).toInstant();
            long before = Math.floorDiv(Duration.between(midnight, from).toSeconds(), length);
            Instant start = midnight.plusSeconds(before * length);
            long buckets = -Math.floorDiv(-Duration.between(start, to).toNanos(), length * 1_000_000_000L);
            return new Buckets(start, start.plusSeconds(buckets * length), length, zone);
        }

        private static Buckets days(Instant from, Instant to, long length, ZoneId zone) {
            long days = length / DAY;
            LocalDate first = from.atZone(zone).toLocalDate();
            long sinceMonday = Math.floorMod(first.toEpochDay() - A_MONDAY.toEpochDay(), days);
            LocalDate start = first.minusDays(sinceMonday);
            LocalDate end = start;
            while (end.atStartOfDay(zone).toInstant().isBefore(to)) {
                end = end.plusDays(days);
            }
            return new Buckets(
                    start.atStartOfDay(zone).toInstant(), end.atStartOfDay(zone).toInstant(), length, zone);
        }
    }

    private static KnownSensor known(Map<String, KnownSensor> known, String key) {
        KnownSensor sensor = known.get(key);
        if (sensor == null) {
            throw Problem.notFound("sensor", key);
        }
        return sensor;
    }

    private static void check(List<String> keys, Instant from, Instant to, int points) {
        if (keys.isEmpty() || keys.size() > 12) {
            throw Problem.unprocessable("series", "sensor", "Ask for 1 to 12 sensors.");
        }
        if (!from.isBefore(to) || Duration.between(from, to).toDays() > 366L * 100) {
            throw Problem.unprocessable("series", "from", "The span starts before it ends and is at most 100 years.");
        }
        if (points < 1 || points > 5_000) {
            throw Problem.unprocessable("series", "points", "Ask for 1 to 5000 points.");
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
