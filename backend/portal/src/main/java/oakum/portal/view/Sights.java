package oakum.portal.view;

import java.time.Clock;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Houses;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Accounts;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Finds out in which role somebody looks, and at what. */
@Component
class Sights {
    private final Houses houses;
    private final Access access;
    private final Accounts accounts;
    private final Clock clock;
    private final ZoneId office;

    Sights(Houses houses, Access access, Accounts accounts, Clock clock, @Value("${oakum.time-zone}") ZoneId office) {
        this.houses = houses;
        this.access = access;
        this.accounts = accounts;
        this.clock = clock;
        this.office = office;
    }

    /**
     * Every house in which the caller holds a role.
     *
     * @param wanted the role, or null for the first that the caller holds
     * @return null for somebody who holds none yet
     * @throws Problem 403 for a role that the caller does not hold
     */
    @Nullable
    Sight of(@Nullable Role wanted) {
        List<HouseView> visible = houses.visible();
        Set<Role> held = EnumSet.noneOf(Role.class);
        held.addAll(access.firmRoles());
        visible.forEach(house -> held.addAll(access.roles(house.id())));
        Role role = chosen(wanted, held);
        return role == null
                ? null
                : sight(
                        role,
                        visible.stream()
                                .filter(house -> access.roles(house.id()).contains(role))
                                .toList());
    }

    /**
     * One house.
     *
     * @throws Problem 404 where the caller may not see it, 403 for a role that the caller does not hold for it
     */
    Sight of(String houseId, @Nullable Role wanted) {
        HouseView house = houses.find(houseId);
        Role role = chosen(wanted, access.roles(houseId));
        if (role == null) {
            throw Problem.notFound("house", houseId);
        }
        return sight(role, List.of(house));
    }

    private static @Nullable Role chosen(@Nullable Role wanted, Set<Role> held) {
        if (wanted != null && !held.contains(wanted)) {
            throw Problem.forbidden("You do not hold the role " + wanted.label() + ".");
        }
        return wanted != null ? wanted : held.stream().min(Role::compareTo).orElse(null);
    }

    private Sight sight(Role role, List<HouseView> own) {
        Shown shown = new Shown(accounts.units(access.caller().personId()));
        return new Sight(role, own, shown, clock.instant(), office);
    }
}
