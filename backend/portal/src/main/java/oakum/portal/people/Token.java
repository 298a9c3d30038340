package oakum.portal.people;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What lets a machine speak for a person: no more than the person may, and only for some houses and permissions. */
@Entity
@Table(schema = "people", name = "token")
class Token {
    @Id
    private UUID id;

    private UUID accountId;
    private String label;

    /** Only ever searched for. */
    @SuppressWarnings("UnusedVariable")
    private byte[] secretHash;

    private Instant createdAt;
    private Instant expiresAt;

    @Nullable
    private Instant revokedAt;

    @Nullable
    private Instant lastUsedAt;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(schema = "people", name = "token_house", joinColumns = @JoinColumn(name = "token_id"))
    @Column(name = "house_id")
    private Set<String> houses = new HashSet<>();

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(schema = "people", name = "token_permission", joinColumns = @JoinColumn(name = "token_id"))
    @Column(name = "permission")
    @Enumerated(EnumType.STRING)
    private Set<Permission> permissions = new HashSet<>();

    /** For the database library. */
    @SuppressWarnings("NullAway.Init")
    protected Token() {}

    Token(
            UUID accountId,
            String label,
            byte[] secretHash,
            Instant createdAt,
            Instant expiresAt,
            Set<String> houses,
            Set<Permission> permissions) {
        this.id = UUID.randomUUID();
        this.accountId = accountId;
        this.label = label;
        this.secretHash = secretHash.clone();
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
        this.houses = new HashSet<>(houses);
        this.permissions = new HashSet<>(permissions);
    }

    UUID id() {
        return id;
    }

    UUID accountId() {
        return accountId;
    }

    String label() {
        return label;
    }

    Instant createdAt() {
        return createdAt;
    }

    Instant expiresAt() {
        return expiresAt;
    }

    @Nullable
    Instant revokedAt() {
        return revokedAt;
    }

    @Nullable
    Instant lastUsedAt() {
        return lastUsedAt;
    }

    Set<String> houses() {
        return houses;
    }

    Set<Permission> permissions() {
        return permissions;
    }

    boolean good(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt);
    }

    void used(Instant now) {
        lastUsedAt = now;
    }

    void revoke(Instant now) {
        if (revokedAt == null) {
            revokedAt = now;
        }
    }
}
