package oakum.portal.site;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A loose end.
 *
 * @param originKey names what made it: "C9/9-01-north-east-corner-high"; empty when a person did
 * @param overdue whether it is open and its day has passed on the house's calendar
 * @param wantsAfterPhoto whether closing needs a photo of how it is now
 * @param asLeft how it was left, when closed
 * @param actions what this person may do now
 */
public record LooseEndShown(
        UUID id,
        String houseId,
        String title,
        String because,
        Role ownerRole,
        LocalDate dueOn,
        boolean overdue,
        LooseEndOrigin origin,
        String originKey,
        boolean wantsAfterPhoto,
        String openedBy,
        Instant openedAt,
        boolean closed,
        @Nullable String closedBy,
        @Nullable Instant closedAt,
        @Nullable String closeReason,
        @Nullable String asLeft,
        @Nullable UUID afterPhoto,
        long version,
        List<String> actions) {}
