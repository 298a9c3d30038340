package oakum.physics.envelope;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/**
 * Heat that leaves along a line beyond what the areas count.
 *
 * @param source of ψ: a calculation of the detail, a table of defaults, a test
 */
public record LinearBridge(
        @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Name") String label,

        @Quantity(
                label = "Length",
                symbol = "l",
                unit = Unit.METRE,
                min = 0,
                max = 5000,
                limitSource = InputRange.PLAUSIBLE)
        double lengthM,

        @Quantity(
                label = "Heat along the line",
                symbol = "ψ",
                unit = Unit.WATT_PER_METRE_KELVIN,
                min = -2,
                max = 5,
                limitSource = InputRange.PLAUSIBLE)
        double psiWPerMK,

        @Entry(label = "ψ belongs to") Dimensions dimensions,
        @Entry(label = "Source of ψ") String source) {}
