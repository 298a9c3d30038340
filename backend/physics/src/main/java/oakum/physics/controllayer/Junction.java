package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import org.jspecify.annotations.Nullable;

/**
 * Where two faces of the envelope meet, and how each of the four controls passes on.
 *
 * @param from id of an assembly
 * @param to id of another assembly, "windows", or null where the assembly meets itself or its own edge
 * @param thermalBreak whether concrete, steel or framing is kept from running through the insulation; null where nobody
 *     said
 * @param coverCheck code of the cover check that looks at it, or null
 */
public record Junction(
        @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Name") String label,
        @Entry(label = "Kind") JunctionKind kind,

        @Entry(label = "Assembly", help = "The short name of an assembly.", maxLength = 40)
        String from,

        @Entry(label = "Meets", help = "The short name of another assembly, or windows.", maxLength = 40) @Nullable
        String to,

        @Entry(label = "Water") Join water,
        @Entry(label = "Air") Join air,
        @Entry(label = "Vapour") Join vapour,
        @Entry(label = "Heat") Join thermal,

        @Entry(label = "Thermal break", help = "Nothing that conducts runs through the insulation here.") @Nullable
        Boolean thermalBreak,

        @Entry(label = "Cover check", help = "The code of the cover check that looks at it.", maxLength = 8) @Nullable
        String coverCheck) {

    /** How one of the four controls passes on. */
    public Join join(Control control) {
        return switch (control) {
            case WATER -> water;
            case AIR -> air;
            case VAPOUR -> vapour;
            case THERMAL -> thermal;
            case DRAIN, RAIN -> throw new IllegalArgumentException(control + " is not joined at junctions");
        };
    }
}
