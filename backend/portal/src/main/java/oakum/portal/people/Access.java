package oakum.portal.people;

import java.util.Set;

/** Who is calling and what they may do; every service asks before it reads or changes a house. */
public interface Access {
    /** Who makes this request; during start-up work, the portal itself. */
    Caller caller();

    /** The roles that the caller holds for this house: those held for the firm and those held for the house. */
    Set<Role> roles(String houseId);

    /** The roles that the caller holds for the whole firm. */
    Set<Role> firmRoles();

    boolean may(Permission permission, String houseId);

    /**
     * Lets the caller pass or refuses.
     *
     * @throws oakum.portal.http.Problem 404 where the caller may not even see the house, 403 where they may see it but
     *     not do this
     */
    void require(Permission permission, String houseId);

    /**
     * The same for what concerns no single house.
     *
     * @throws oakum.portal.http.Problem 403
     */
    void require(Permission permission);

    /** Whether the caller holds it for the firm or for any house: for what all houses share, such as weather. */
    boolean mayAnywhere(Permission permission);

    /**
     * Lets pass who may anywhere.
     *
     * @throws oakum.portal.http.Problem 403
     */
    void requireAnywhere(Permission permission);

    /** Whether the caller sees every house of the firm; otherwise only {@link #sharedHouses}. */
    boolean seesAllHouses();

    /** The houses shared with the caller one by one. */
    Set<String> sharedHouses();
}
