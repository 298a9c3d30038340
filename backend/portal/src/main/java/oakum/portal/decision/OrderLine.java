package oakum.portal.decision;

/**
 * Something ordered because of a decision.
 *
 * @param id short name within the decision
 */
public record OrderLine(String id, String title, State state, String note) {
    /** How much money and work is behind it. */
    public enum State {
        ORDERED,
        HELD,
        BOUGHT,
        BUILT
    }
}
