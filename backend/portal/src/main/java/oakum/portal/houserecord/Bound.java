package oakum.portal.houserecord;

import java.util.List;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Relied;

/**
 * What a result was bound to.
 *
 * @param relied every value that came from the record, with its text then
 */
public record Bound(String calculation, List<Binding> bindings, List<Relied> relied) {}
