package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import oakum.portal.houserecord.standing.Relied;

/**
 * The inputs of a calculation as bindings draw them from a record.
 *
 * @param inputs every input by pointer
 * @param relied which of them came from the record, and from where
 * @param revisions of each part at that moment, by its key
 */
public record Drawn(Map<String, String> inputs, List<Relied> relied, Map<String, Integer> revisions) {}
