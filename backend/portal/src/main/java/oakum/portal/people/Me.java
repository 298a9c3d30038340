package oakum.portal.people;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Who is signed in.
 *
 * @param today the firm's day
 * @param token whether a machine speaks for the person
 */
record Me(
        String account,
        String displayName,
        List<Held> roles,
        Units units,
        LocalDate today,
        String firmName,
        boolean token) {
    /** A role and the house for which it is held, null for the whole firm. */
    record Held(Role role, @Nullable String houseId) {}
}
