package oakum.portal.people;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Accounts, for other modules. */
public interface Accounts {
    /**
     * Makes sure that an account stands there and holds a role; an account that is there keeps its name and password.
     * Called again with another house, it adds that house.
     *
     * @param account the name to sign in with: 1 to 60 of a-z, 0-9, dot and hyphen
     * @param displayName as shown to others, at most 120 characters
     * @param password at least 8 characters
     * @param role what they are
     * @param houseId for which house, or null for the whole firm; an owner or consultant without a house sees nothing
     *     until one is shared
     * @return the account's id
     * @throws oakum.portal.http.Problem 422 naming the field that breaks a rule
     */
    UUID createIfAbsent(String account, String displayName, String password, Role role, @Nullable String houseId);

    /** What an account is called; empty where there is none of that id. */
    Optional<String> displayName(UUID personId);

    /**
     * In which units somebody reads numbers.
     *
     * @throws oakum.portal.http.Problem 404 where there is no such account
     */
    Units units(UUID personId);

    /** The tokens that speak for somebody today, the latest first. */
    List<HeldToken> tokens(UUID personId);

    /** What those are called who hold a role for this one house; for a caller who may see it. */
    Set<String> holders(String houseId, Role role);

    /**
     * Runs work as the person of an account, on this thread: for history that is loaded, and for a feed whose address holds
     * that person's own secret; never for another request.
     *
     * @throws oakum.portal.http.Problem 404 where there is no such account
     */
    <T> T as(String account, Supplier<T> work);
}
