package oakum.portal.people;

import java.util.Set;

/**
 * A token that somebody wants.
 *
 * @param label what it is for
 * @param houses the houses it covers; none for every house of the person
 * @param permissions what it may do; never more than the person
 * @param days how long it lasts, 1 to 366
 */
record NewToken(String label, Set<String> houses, Set<Permission> permissions, int days) {}
