package oakum.portal.aftercare;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What an owner tells.
 *
 * @param what in the owner's own words, 1 to 4000 characters
 * @param inHouse where in the house, or null
 * @param photos ids of photos sent before, at most 10, or null
 * @param slot one of the offered times, or null
 * @param preference when else it suits, or null
 */
public record OwnerReportSent(
        @NotBlank @Size(max = 4000) String what,
        @Nullable @Size(max = 200) String inHouse,
        @Nullable @Size(max = 10) List<@NotNull UUID> photos,
        OfferedSlot.@Nullable ChosenSlot slot,
        @Nullable @Size(max = 500) String preference) {

    List<UUID> photoIds() {
        return photos == null ? List.of() : photos.stream().distinct().toList();
    }
}
