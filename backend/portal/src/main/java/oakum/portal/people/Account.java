package oakum.portal.people;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Somebody who may sign in, with the roles they hold. */
@Entity
@Table(schema = "people", name = "account")
class Account {
    @Id
    private UUID id;

    private String account;
    private String displayName;

    @Nullable
    private String passwordHash;

    private boolean active = true;
    private String units = "IP";
    private Instant createdAt;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(schema = "people", name = "held_role", joinColumns = @JoinColumn(name = "account_id"))
    private Set<HeldRole> roles = new HashSet<>();

    /** For the database library. */
    @SuppressWarnings("NullAway.Init")
    protected Account() {}

    Account(String account, String displayName, String passwordHash, Instant createdAt) {
        this.id = UUID.randomUUID();
        this.account = account;
        this.displayName = displayName;
        this.passwordHash = passwordHash;
        this.createdAt = createdAt;
    }

    UUID id() {
        return id;
    }

    String account() {
        return account;
    }

    String displayName() {
        return displayName;
    }

    @Nullable
    String passwordHash() {
        return passwordHash;
    }

    boolean active() {
        return active;
    }

    String units() {
        return units;
    }

    Instant createdAt() {
        return createdAt;
    }

    void usePassword(String hash) {
        passwordHash = hash;
    }

    void close() {
        active = false;
    }

    /** The roles that are held on a day; one that has ended is none. */
    Set<HeldRole> rolesOn(LocalDate day) {
        return roles.stream().filter(role -> role.heldOn(day)).collect(Collectors.toSet());
    }

    void useUnits(String chosen) {
        units = chosen;
    }

    Set<HeldRole> roles() {
        return roles;
    }
}
