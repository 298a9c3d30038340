package oakum.portal.people;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import org.jspecify.annotations.Nullable;

/**
 * A role that somebody holds.
 *
 * @param role what they are
 * @param houseId for which house, null for the whole firm
 */
@Embeddable
record HeldRole(
        @Enumerated(EnumType.STRING) @Column(nullable = false)
        Role role,

        @Nullable String houseId) {}
