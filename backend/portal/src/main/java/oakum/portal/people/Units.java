package oakum.portal.people;

/** The habit in which somebody reads numbers; what travels is always SI. */
public enum Units {
    SI,
    IP
}
