package oakum.portal.houserecord.standing;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.jspecify.annotations.Nullable;

/**
 * A value that a proof relied on and that is another one now.
 *
 * @param path where it stands in the record
 * @param input the input it goes into
 * @param old what was relied on, or null where there was nothing
 * @param present what stands there now, or null where there is nothing any more
 */
public record Difference(
        String path,
        String input,
        @Nullable String old,
        @JsonProperty("new") @Nullable String present) {}
