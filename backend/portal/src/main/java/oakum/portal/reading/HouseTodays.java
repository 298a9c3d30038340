package oakum.portal.reading;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Says how a house is from the last day of its readings. It reads means over a day, so that no shower counts. */
@Service
public class HouseTodays {
    private static final Duration LAST = Duration.ofDays(1);
    private static final Duration LOOKS = Duration.ofDays(30);

    /**
     * What a mean over a day may be. Firm rules, no published source, but for the humidity: general public advice says
     * below 60 %.
     *
     * @param word what a house is that keeps it
     * @param min the least mean that is right, or null
     * @param max the greatest mean that is right, or null
     */
    private record DayRule(
            ObservedProperty property,
            String word,
            @Nullable Double min,
            @Nullable Double max) {
        boolean right(double value) {
            return (min == null || value >= min) && (max == null || value <= max);
        }
    }

    private static final List<DayRule> RULES = List.of(
            new DayRule(ObservedProperty.WOOD_MOISTURE, "dry", null, 0.20),
            new DayRule(ObservedProperty.RELATIVE_HUMIDITY, "dry", null, 0.60),
            new DayRule(ObservedProperty.AIR_TEMPERATURE, "warm", 18.0, null),
            new DayRule(ObservedProperty.CARBON_DIOXIDE, "breathing well", null, 1200.0));

    private final JdbcClient jdbc;
    private final Sensors sensors;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    HouseTodays(JdbcClient jdbc, Sensors sensors, Access access, Audit audit, Clock clock) {
        this.jdbc = jdbc;
        this.sensors = sensors;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * How a house is today.
     *
     * @throws oakum.portal.http.Problem 403, 404 where the caller may not read its readings
     */
    @Transactional(readOnly = true)
    public HouseToday of(String house) {
        access.require(Permission.VIEW_READINGS, house);
        Instant now = clock.instant();
        Map<String, KnownSensor> known = sensors.known(house);
        List<HouseToday.Item> items = new ArrayList<>();
        Set<String> read = new LinkedHashSet<>();
        for (Sensor sensor : sensors.list(house)) {
            read.add(plain(sensor.property()));
            RULES.stream()
                    .filter(rule -> rule.property() == sensor.property() && indoors(sensor))
                    .forEach(rule -> {
                        KnownSensor of = known.get(sensor.key());
                        Double mean = of == null ? null : mean(of, now);
                        if (mean != null) {
                            items.add(item(rule, sensor, mean));
                        }
                    });
        }
        return new HouseToday(
                now,
                sentence(items),
                items,
                List.copyOf(read),
                audit.doneBy("readings-looked-at", house, now.minus(LOOKS)));
    }

    /** The rules are about rooms and about wood; what hangs outdoors is neither warm nor damp to blame. */
    private static boolean indoors(Sensor sensor) {
        return sensor.property() == ObservedProperty.WOOD_MOISTURE || sensor.room() != null;
    }

    private @Nullable Double mean(KnownSensor sensor, Instant now) {
        return jdbc.sql("""
                        select sum(mean * count) / sum(count) from reading.hour
                        where sensor_id = ? and hour >= ? and hour < ?""")
                .params(sensor.id(), Timestamp.from(now.minus(LAST)), Timestamp.from(now))
                .query(Double.class)
                .optional()
                .orElse(null);
    }

    private static HouseToday.Item item(DayRule rule, Sensor sensor, double mean) {
        String limit = rule.max() != null
                ? "at most " + text(rule.property(), rule.max())
                : "at least " + text(rule.property(), rule.min() == null ? 0 : rule.min());
        return new HouseToday.Item(
                rule.word(),
                sensor.key(),
                sensor.label(),
                UnitJson.of(rule.property().unit()),
                mean,
                rule.right(mean),
                limit);
    }

    /** What is read, in words for people who did not ask for sensors. */
    private static String plain(ObservedProperty property) {
        return switch (property) {
            case AIR_TEMPERATURE -> "temperature";
            case RELATIVE_HUMIDITY -> "humidity";
            case CARBON_DIOXIDE -> "air freshness";
            case PRESSURE_DIFFERENCE -> "filter pressure";
            case HOUSE_PRESSURE -> "house pressure";
            case STATE -> "leak sensors";
            default -> property.label();
        };
    }

    static String sentence(List<HouseToday.Item> items) {
        if (items.isEmpty()) {
            return "No reading came in the last day, so this page cannot say how the house is.";
        }
        List<HouseToday.Item> wrong =
                items.stream().filter(item -> !item.right()).toList();
        if (!wrong.isEmpty()) {
            HouseToday.Item first = wrong.get(0);
            return "One thing wants a look: " + first.label() + " should be " + first.limit() + ".";
        }
        // in the order of the rules, whatever the order of the sensors
        List<String> words = RULES.stream()
                .map(DayRule::word)
                .distinct()
                .filter(word -> items.stream().anyMatch(item -> item.word().equals(word)))
                .toList();
        String last = words.get(words.size() - 1);
        String all = words.size() == 1 ? last : String.join(", ", words.subList(0, words.size() - 1)) + " and " + last;
        return "Your house is " + all + ".";
    }

    private static String text(ObservedProperty property, double value) {
        var shown = property.unit().si();
        return String.format(Locale.ROOT, "%.0f", value * shown.factor() + shown.offset()) + "\u202f" + shown.symbol();
    }
}
