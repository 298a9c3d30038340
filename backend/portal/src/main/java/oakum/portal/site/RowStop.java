package oakum.portal.site;

import org.jspecify.annotations.Nullable;

/**
 * A row that keeps a cover check shut.
 *
 * @param row its id within the check
 * @param lookAt its question
 * @param place where in the house
 * @param reason one sentence
 */
public record RowStop(String row, String lookAt, @Nullable String place, String reason) {}
