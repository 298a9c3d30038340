package oakum.portal.houserecord;

import com.fasterxml.jackson.annotation.JsonProperty;
import oakum.portal.calculation.FieldJson;
import org.jspecify.annotations.Nullable;

/**
 * One value in two states of the record.
 *
 * @param path where it stands
 * @param unit the unit of a number, else null
 * @param old canonical text, or null where there was nothing
 * @param present canonical text, or null where there is nothing any more
 */
public record ValueDifference(
        String path,
        String label,
        FieldJson.@Nullable UnitJson unit,
        @Nullable String old,
        @JsonProperty("new") @Nullable String present) {}
