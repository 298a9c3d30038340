package oakum.portal.reading;

import org.jspecify.annotations.Nullable;

/**
 * A sensor of a house.
 *
 * @param key its name in files, unique in the house: {@code kitchen-air}
 * @param unit the unit of its readings, as UCUM code; follows from the property
 * @param room the room it is in, or null
 * @param place where exactly, as on the section: "north wall, behind the sheathing, 0.4 m above the sill"
 * @param instrument what kind of instrument
 * @param accuracy the instrument's stated error, plus or minus, in {@code unit}
 * @param sampleIntervalS seconds between readings, where they are regular
 */
public record Sensor(
        String key,
        String label,
        ObservedProperty property,
        String unit,
        @Nullable String room,
        @Nullable String place,
        @Nullable String instrument,
        @Nullable Double accuracy,
        @Nullable Integer sampleIntervalS,
        long version) {}
