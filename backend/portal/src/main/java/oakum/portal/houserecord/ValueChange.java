package oakum.portal.houserecord;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One value that is to become another.
 *
 * @param path into a part of the record: {@code air.exhaust[rangeHood].ratedFlowM3PerS}
 * @param value a number, a text, true or false as the field wants it; null empties an optional field
 */
public record ValueChange(String path, @Nullable JsonNode value) {}
