package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Hot water, where the heater stands, and where a leak goes. */
public record WaterPart(
        @Entry(label = "Water heater") @Nullable Heater heater,
        @Entry(label = "Its room") @Nullable HeaterRoom room,
        @Entry(label = "Leak paths", maxRows = 30) List<LeakPath> leakPaths)
        implements Part {
    public WaterPart {
        leakPaths = leakPaths == null ? List.of() : List.copyOf(leakPaths);
    }

    /** How water is heated. */
    public enum HeaterKind implements Labelled {
        HEAT_PUMP("heat pump"),
        RESISTANCE("resistance"),
        OTHER("other");

        private final String label;

        HeaterKind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** The water heater. */
    public record Heater(
            @Entry(label = "Name") String label,
            @Entry(label = "Kind") HeaterKind kind,

            @Quantity(label = "Storage", unit = Unit.LITRE, min = 0, max = 2000, limitSource = PlausibleRange.SOURCE)
            double storageL,

            @Quantity(
                    label = "Store temperature",
                    unit = Unit.CELSIUS,
                    min = 30,
                    max = 90,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double storeC,

            @Entry(label = "Mixing valve") boolean mixingValve) {}

    /** Where it stands. */
    public record HeaterRoom(
            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Air volume",
                    unit = Unit.CUBIC_METRE,
                    min = 1,
                    max = 2000,
                    limitSource = PlausibleRange.SOURCE)
            double volumeM3,

            @Quantity(
                    label = "Free area of openings to other rooms",
                    unit = Unit.SMALL_SQUARE_METRE,
                    min = 0,
                    max = 10,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double freeAreaM2) {}

    /** From where water may come and where it then goes. */
    public record LeakPath(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Caught by") String caughtBy,
            @Entry(label = "Goes to") String goesTo,
            @Entry(label = "Sensor") boolean alarm,
            @Entry(label = "Shuts the water off") boolean shutsOff) {}
}
