package oakum.portal.site;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * An answer to a row; sent again with the same id it is known already.
 *
 * @param clientId made by the device, one for each answer
 * @param value the number in the row's SI unit; required for "right" where the row asks for one
 * @param note required for "not in this house": the reason
 * @param photos ids of photos sent before
 * @param takenAt when the device says it was given
 * @param repeatOf the answer that the person saw and now looks at again; null for a first look
 * @param fix who mends it and by when, for "not right"; the firm's defaults where left out
 */
public record RowAnswerSent(
        @NotNull UUID clientId,
        @NotNull RowAnswer answer,
        @Nullable Double value,
        @Nullable @Size(max = 2000) String note,
        @Nullable @Size(max = 20) List<@NotNull UUID> photos,
        @NotNull Instant takenAt,
        @Nullable UUID repeatOf,
        @Nullable @Valid FixAsked fix) {

    /** Who mends what is not right, and by which day of the house's calendar. */
    public record FixAsked(
            @NotNull Role ownerRole,
            @NotNull LocalDate dueOn,
            @NotBlank @Size(max = 300) String what) {}

    String noteText() {
        return note == null ? "" : note.strip();
    }

    List<UUID> photoIds() {
        return photos == null ? List.of() : photos.stream().distinct().toList();
    }
}
