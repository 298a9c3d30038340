package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Indoor humidity: its limits, its sources, what adds and takes moisture. */
public record MoisturePart(
        @Quantity(
                label = "Moisture from living",
                unit = Unit.KILOGRAM_PER_HOUR,
                min = 0,
                max = 5,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double indoorSourceKgPerH,

        @Entry(label = "Humidity limits", maxRows = 20) List<HumidityLimit> limits,
        @Entry(label = "Humidifier") @Nullable Equipment humidifier,
        @Entry(label = "Dehumidifier") @Nullable Equipment dehumidifier,

        @Entry(
                label = "Outdoor months",
                help = "Twelve, January first: what the monthly vapour balance takes.",
                maxRows = 12)
        List<OutdoorMonth> outdoorMonths)
        implements Part {
    @SuppressWarnings({"ConstantConditions", "NullAway"}) // a document that was kept before the months could be said
    public MoisturePart {
        limits = limits == null ? List.of() : List.copyOf(limits);
        outdoorMonths = outdoorMonths == null ? List.of() : List.copyOf(outdoorMonths);
    }

    /** A month's mean outdoor air; relative humidity below 0 °C is counted over ice (ISO 13788). */
    public record OutdoorMonth(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Quantity(
                    label = "Outdoor temperature",
                    symbol = "θ_e",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = PlausibleRange.SOURCE)
            double outdoorC,

            @Quantity(
                    label = "Outdoor relative humidity",
                    symbol = "φ_e",
                    unit = Unit.FRACTION,
                    min = 0.01,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Below 0 °C over ice.")
            double outdoorHumidityFraction) {}

    /** The most indoor humidity at one outdoor temperature. */
    public record HumidityLimit(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Quantity(label = "Outdoors", unit = Unit.CELSIUS, min = -60, max = 40, limitSource = PlausibleRange.SOURCE)
            double outdoorC,

            @Quantity(
                    label = "Greatest relative humidity",
                    unit = Unit.FRACTION,
                    min = 0.05,
                    max = 0.95,
                    limitSource = PlausibleRange.SOURCE)
            double relativeHumidityFraction,

            @Entry(label = "Set by", help = "The wall, the glass edge, the floor.")
            String setBy) {}

    /** Equipment that adds or takes moisture. */
    public record Equipment(
            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Capacity",
                    unit = Unit.KILOGRAM_PER_HOUR,
                    min = 0,
                    max = 20,
                    limitSource = PlausibleRange.SOURCE)
            double capacityKgPerH) {}
}
