package oakum.portal.site;

/** What made a loose end. */
public enum LooseEndOrigin {
    /** A row of a cover check that was not right. */
    COVER_CHECK,
    /** A measurement that does not fit the design. */
    SETTING_TO_WORK,
    /** Somebody saw it. */
    PERSON
}
