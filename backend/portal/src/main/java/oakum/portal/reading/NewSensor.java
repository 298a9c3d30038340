package oakum.portal.reading;

import org.jspecify.annotations.Nullable;

/**
 * What a person says of a sensor; {@link Sensor} explains the members.
 *
 * @param key lower-case letters, digits, dots and hyphens, at most 64
 */
public record NewSensor(
        String key,
        String label,
        ObservedProperty property,
        @Nullable String room,
        @Nullable String place,
        @Nullable String instrument,
        @Nullable Double accuracy,
        @Nullable Integer sampleIntervalS) {}
