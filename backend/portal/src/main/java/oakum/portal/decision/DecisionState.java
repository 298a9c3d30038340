package oakum.portal.decision;

/** Where a decision stands, from its latest approvals. */
public enum DecisionState {
    OPEN,
    PARTLY_APPROVED,
    APPROVED,
    FRESH_LOOK,
    LAPSED
}
