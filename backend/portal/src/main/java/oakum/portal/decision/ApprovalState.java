package oakum.portal.decision;

/** What has become of an approval, worst last; derived, never stored (except that it was withdrawn). */
public enum ApprovalState {
    STANDS,
    /** Inputs changed and were recomputed with the same result. */
    CARRIED_OVER,
    /** Something that it rests on can no longer be told, or a neighbour asks for another look. */
    FRESH_LOOK,
    LAPSED,
    WITHDRAWN
}
