package oakum.physics.weather;

import java.time.ZoneOffset;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** Where weather is measured or a house stands. */
public record Place(
        @Entry(label = "Place") String name,

        @Quantity(
                label = "Latitude",
                symbol = "φ",
                unit = Unit.DEGREE,
                min = -90,
                max = 90,
                limitSource = "definition",
                help = "North is positive.")
        double latitudeDeg,

        @Quantity(
                label = "Longitude",
                symbol = "λ",
                unit = Unit.DEGREE,
                min = -180,
                max = 180,
                limitSource = "definition",
                help = "East is positive.")
        double longitudeDeg,

        @Quantity(
                label = "Altitude",
                symbol = "Z",
                unit = Unit.METRE,
                min = -430,
                max = 5500,
                limitSource = "lowest shore and highest settlements on earth")
        double altitudeM,

        @Quantity(
                label = "Standard time ahead of UTC",
                unit = Unit.HOUR,
                min = -12,
                max = 14,
                limitSource = "time zones on earth",
                help = "Without summer time: −5 in New York, 2 in Helsinki.")
        double standardOffsetH) {

    /** The place's standard time, to the minute. */
    ZoneOffset offset() {
        return ZoneOffset.ofTotalSeconds((int) Math.round(standardOffsetH * 60) * 60);
    }
}
