package oakum.portal.site;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.springframework.stereotype.Component;

/** Whether the house is there and what the caller may do in it; and what day it is where it stands. */
@Component
class HouseAccess {
    private final Houses houses;
    private final Access access;
    private final Clock clock;

    HouseAccess(Houses houses, Access access, Clock clock) {
        this.houses = houses;
        this.access = access;
        this.clock = clock;
    }

    /**
     * Lets the caller pass or refuses.
     *
     * @throws oakum.portal.http.Problem 404 where there is no such house that the caller may see, 403 where they may see
     *     it but not do this
     */
    void require(Permission permission, String houseId) {
        houses.find(houseId);
        access.require(permission, houseId);
    }

    /** Today by the house's own calendar. */
    LocalDate today(String houseId) {
        return LocalDate.now(clock.withZone(ZoneId.of(houses.find(houseId).timeZone())));
    }
}
