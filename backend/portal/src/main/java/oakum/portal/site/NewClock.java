package oakum.portal.site;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A clock to start.
 *
 * @param id lower case letters, digits and hyphens: "membrane-south"
 * @param label what stands exposed: "Outer membrane, south face"
 * @param startedOn the day it was unrolled
 * @param limitDays how many days it may stand, 1 to 3650
 * @param limitSource where the limit comes from: "data sheet"
 * @param plannedOn the day on which it is to be covered, or null
 */
public record NewClock(
        @NotNull @Pattern(regexp = "[a-z0-9][a-z0-9-]{0,39}")
        String id,

        @NotBlank @Size(max = 120) String label,
        @NotNull LocalDate startedOn,
        @Min(1) @Max(3650) int limitDays,
        @NotBlank @Size(max = 200) String limitSource,
        @Nullable LocalDate plannedOn) {}
