package oakum.portal.site;

/**
 * What another day of covering would do.
 *
 * @param saved the clock as it is
 * @param trial the clock as it would be; nothing was saved
 */
public record ClockTrialShown(ClockShown saved, ClockShown trial) {}
