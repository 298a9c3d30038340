package oakum.portal.people;

import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A token that speaks for somebody today.
 *
 * @param houses the houses it is narrowed to; empty for every house of the person
 * @param lastUsedAt to the minute, or null where it was never used
 */
public record HeldToken(
        String label,
        Set<String> houses,
        Instant expiresAt,
        @Nullable Instant lastUsedAt) {}
