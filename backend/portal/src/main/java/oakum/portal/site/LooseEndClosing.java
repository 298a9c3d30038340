package oakum.portal.site;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How a loose end was closed.
 *
 * @param reason what was done, or why nothing had to be
 * @param asLeft how it was left, such as a value read afterwards; or null
 * @param afterPhoto a photo of how it is now; required where the loose end asks for one
 */
public record LooseEndClosing(
        @NotBlank @Size(max = 1000) String reason,
        @Nullable @Size(max = 1000) String asLeft,
        @Nullable UUID afterPhoto) {}
