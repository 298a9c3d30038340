package oakum.portal.site;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A loose end that a person saw.
 *
 * @param title what is open, one sentence
 * @param because why it matters, or null
 * @param ownerRole who mends it
 * @param dueOn by which day of the house's calendar
 * @param wantsAfterPhoto whether closing needs a photo; no where left out
 */
public record NewLooseEnd(
        @NotBlank @Size(max = 300) String title,
        @Nullable @Size(max = 300) String because,
        @NotNull Role ownerRole,
        @NotNull LocalDate dueOn,
        @Nullable Boolean wantsAfterPhoto) {}
