package oakum.portal.site;

/**
 * A decision behind a cover check that nobody has approved as it is now.
 *
 * @param decision its code
 * @param title its name
 * @param because one line: what changed and who changed it
 */
public record LapsedApproval(String decision, String title, String because) {}
