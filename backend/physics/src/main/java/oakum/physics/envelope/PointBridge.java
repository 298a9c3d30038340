package oakum.physics.envelope;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/**
 * Heat that leaves at single points beyond what the areas count.
 *
 * @param source of χ
 */
public record PointBridge(
        @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Name") String label,

        @Quantity(
                label = "How many",
                symbol = "n",
                unit = Unit.COUNT,
                min = 0,
                max = 10_000,
                limitSource = InputRange.PLAUSIBLE)
        int pointCount,

        @Quantity(
                label = "Heat at one",
                symbol = "χ",
                unit = Unit.WATT_PER_KELVIN,
                min = -1,
                max = 5,
                limitSource = InputRange.PLAUSIBLE)
        double chiWPerK,

        @Entry(label = "Source of χ") String source) {}
