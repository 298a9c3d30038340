package oakum.portal.aftercare;

/**
 * The drops over a filter while it was new, at the high and the low airflow of its follow-up.
 *
 * @param highPa above 0
 * @param lowPa above 0
 */
record CleanMark(double highPa, double lowPa) {}
