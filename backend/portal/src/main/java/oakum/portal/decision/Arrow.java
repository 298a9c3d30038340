package oakum.portal.decision;

/**
 * "A touches B because".
 *
 * @param from code of a decision, or a path of the record
 * @param to code of the decision that is touched
 * @param hard whether B lapses when A moves; otherwise B asks for a fresh look
 * @param trigger what must change, in words
 */
public record Arrow(String from, String to, boolean hard, String because, String trigger) {}
