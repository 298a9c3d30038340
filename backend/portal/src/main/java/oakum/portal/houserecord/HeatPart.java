package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Heat loss and what covers it. */
public record HeatPart(
        @Quantity(
                label = "Design heat loss",
                unit = Unit.WATT,
                min = 0,
                max = 200000,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double designHeatLossW,

        @Quantity(label = "Indoors", unit = Unit.CELSIUS, min = 5, max = 30, limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double indoorC,

        @Entry(label = "Heat pump") @Nullable HeatPump heatPump,

        @Quantity(
                label = "Backup heat",
                unit = Unit.ELECTRIC_WATT,
                min = 0,
                max = 100000,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double backupW)
        implements Part {
    /** What the heat pump gives at one outdoor temperature. */
    public record CapacityPoint(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Quantity(label = "Outdoors", unit = Unit.CELSIUS, min = -60, max = 30, limitSource = PlausibleRange.SOURCE)
            double outdoorC,

            @Quantity(label = "Capacity", unit = Unit.WATT, min = 0, max = 100000, limitSource = PlausibleRange.SOURCE)
            double capacityW,

            @Quantity(
                    label = "Heat for each unit of electricity",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 10,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double performanceRatio) {}

    /** A ducted or ductless heat pump. */
    public record HeatPump(
            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Nominal capacity",
                    unit = Unit.WATT,
                    min = 500,
                    max = 100000,
                    limitSource = PlausibleRange.SOURCE)
            double nominalW,

            @Quantity(
                    label = "Least capacity",
                    unit = Unit.WATT,
                    min = 0,
                    max = 100000,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double minimumW,

            @Quantity(
                    label = "Share left at this altitude",
                    unit = Unit.FRACTION,
                    min = 0.4,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double altitudeFactorFraction,

            @Entry(label = "Capacity", maxRows = 20) List<CapacityPoint> points) {
        public HeatPump {
            points = points == null ? List.of() : List.copyOf(points);
        }
    }
}
