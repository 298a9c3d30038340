package oakum.portal.houserecord;

import oakum.portal.people.KnownHouses;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Tells the module of people, which cannot look here, whether a house is there to be shared. */
@Component
class HousesForPeople implements KnownHouses {
    private final HouseRows rows;

    HousesForPeople(HouseRows rows) {
        this.rows = rows;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean exists(String houseId) {
        return rows.existsById(houseId);
    }
}
