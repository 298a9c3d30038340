package oakum.portal.houserecord.standing;

/** Whether a proof still proves today's record. */
public enum ProofState {
    /** Everything it relied on is as it was, all the way up. */
    CURRENT,
    /** A value that it relied on directly, or its calculation's version, is another one now. */
    INPUTS_CHANGED,
    /** Its own inputs are as they were, but something above it is not current; it may yet come out the same. */
    WAITING
}
