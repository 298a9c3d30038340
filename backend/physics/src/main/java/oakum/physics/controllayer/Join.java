package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import org.jspecify.annotations.Nullable;

/**
 * How one control is joined at a junction.
 *
 * @param detail the detail by its name, or null
 */
public record Join(
        @Entry(label = "Joined") JoinState state,

        @Entry(label = "Detail", help = "The detail by its name: tape over the top plate, pre-placed strip.") @Nullable
        String detail) {}
