package oakum.portal.site;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import oakum.portal.people.Role;

/** Another wording, role or day for a loose end. */
public record LooseEndChange(
        @NotBlank @Size(max = 300) String title,
        @NotNull Role ownerRole,
        @NotNull LocalDate dueOn) {}
