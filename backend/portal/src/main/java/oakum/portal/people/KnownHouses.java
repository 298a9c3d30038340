package oakum.portal.people;

/** Which houses there are; the house record answers it, which this module does not import. */
public interface KnownHouses {
    boolean exists(String houseId);
}
