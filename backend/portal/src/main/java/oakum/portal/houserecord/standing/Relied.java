package oakum.portal.houserecord.standing;

/**
 * One value that a proof relied on.
 *
 * @param path where it stood in the record
 * @param input the input it went into
 * @param value its canonical text then
 */
public record Relied(String path, String input, String value) {}
