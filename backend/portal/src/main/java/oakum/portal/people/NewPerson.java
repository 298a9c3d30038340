package oakum.portal.people;

import org.jspecify.annotations.Nullable;

/**
 * An account to be made.
 *
 * @param account 1 to 60 of a-z, 0-9, dot and hyphen
 * @param password at least 8 characters, at most 72 bytes
 * @param houseId for which house, null for the whole firm
 */
record NewPerson(
        String account,
        String displayName,
        String password,
        Role role,
        @Nullable String houseId) {
    /** Never prints the password. */
    @Override
    public String toString() {
        return "NewPerson[" + account + ", " + role + "]";
    }
}
