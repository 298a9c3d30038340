package oakum.portal.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A token as its owner sees it. */
record TokenView(
        UUID id,
        String label,
        List<String> houses,
        List<Permission> permissions,
        Instant createdAt,
        Instant expiresAt,
        @Nullable Instant revokedAt,
        @Nullable Instant lastUsedAt) {
    static TokenView of(Token token) {
        return new TokenView(
                token.id(),
                token.label(),
                token.houses().stream().sorted().toList(),
                token.permissions().stream().sorted().toList(),
                token.createdAt(),
                token.expiresAt(),
                token.revokedAt(),
                token.lastUsedAt());
    }
}
