package oakum.portal.houserecord;

import oakum.physics.calculation.Field;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a path means.
 *
 * @param label as people read it, with the row's name before it
 * @param unit of a number, else null
 * @param field its declaration, or null where nothing is declared under this path
 */
public record PathInfo(
        String path,
        String label,
        @Nullable Unit unit,
        @Nullable Field field) {}
