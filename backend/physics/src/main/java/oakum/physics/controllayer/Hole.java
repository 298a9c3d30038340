package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/**
 * One hole through the red line.
 *
 * @param assembly id of the assembly that it passes
 * @param expected id of the expected kind of hole that it is one of, or null
 * @param sealedBy how it is closed at the air plane, or null where nobody said
 * @param coverCheck code of the cover check that looks at it, or null
 */
public record Hole(
        @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "What passes") String label,

        @Entry(label = "Assembly", help = "The short name of an assembly.", maxLength = 40)
        String assembly,

        @Entry(label = "Answers the expected hole", help = "The short name of an expected hole.", maxLength = 40)
        @Nullable
        String expected,

        @Quantity(
                label = "Diameter",
                symbol = "d",
                unit = Unit.SMALL_METRE,
                min = 0.001,
                max = 2,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double diameterM,

        @Entry(label = "Sealed at the air plane by", help = "Gasket, sleeve, tape: by its name.") @Nullable
        String sealedBy,

        @Entry(label = "Cover check", help = "The code of the cover check that looks at it.", maxLength = 8) @Nullable
        String coverCheck) {}
