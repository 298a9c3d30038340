package oakum.portal.reading;

import java.time.Duration;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * When a reading beyond a limit is worth somebody's time: only once it stays there. A shower is no finding.
 *
 * @param property of which sensors
 * @param room a word in the room's name, or empty for every room
 * @param limit beyond it a stretch begins, in the property's unit
 * @param below whether being below the limit is being beyond it
 * @param backAt where a stretch ends; nearer to the ordinary than the limit, so that noise does not cut one in two
 * @param persistence how long a stretch may last before somebody looks
 * @param source where the numbers come from
 */
record PersistenceRule(
        ObservedProperty property,
        String room,
        double limit,
        boolean below,
        double backAt,
        Duration persistence,
        String source) {
    private static final PersistenceRule[] ALL = {
        new PersistenceRule(
                ObservedProperty.RELATIVE_HUMIDITY,
                "bath",
                0.70,
                false,
                0.60,
                Duration.ofHours(3),
                "firm rule, no published source; a shower peaks at 85 to 100 % and is back within 30 to 90 minutes"),
        new PersistenceRule(
                ObservedProperty.WOOD_MOISTURE,
                "",
                0.20,
                false,
                0.17,
                Duration.ofDays(14),
                "firm rule, no published source"),
        new PersistenceRule(
                ObservedProperty.HOUSE_PRESSURE,
                "",
                -10,
                true,
                -9,
                Duration.ofMinutes(5),
                "firm rule for a house without a flue, no published source"),
    };

    /** The rule for a sensor, or null where none is kept. */
    static @Nullable PersistenceRule of(Sensor sensor) {
        String room = sensor.room() == null ? "" : sensor.room().toLowerCase(Locale.ROOT);
        for (PersistenceRule rule : ALL) {
            if (rule.property == sensor.property() && room.contains(rule.room)) {
                return rule;
            }
        }
        return null;
    }

    boolean beyond(double value) {
        return below ? value < limit : value > limit;
    }

    boolean back(double value) {
        return below ? value > backAt : value < backAt;
    }

    /** Whether one value lies farther beyond than another. */
    boolean farther(double value, double than) {
        return below ? value < than : value > than;
    }
}
