package oakum.portal.people;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A role that somebody holds.
 *
 * @param role what they are
 * @param houseId for which house, null for the whole firm
 * @param endsOn the last day on which it is held by the firm's calendar, null until it is taken back
 */
@Embeddable
record HeldRole(
        @Enumerated(EnumType.STRING) @Column(nullable = false)
        Role role,

        @Nullable String houseId,
        @Nullable LocalDate endsOn) {

    boolean heldOn(LocalDate day) {
        return endsOn == null || !day.isAfter(endsOn);
    }

    boolean is(Role what, @Nullable String where) {
        return role == what && Objects.equals(houseId, where);
    }
}
