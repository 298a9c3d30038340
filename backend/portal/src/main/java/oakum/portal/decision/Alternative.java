package oakum.portal.decision;

import java.util.List;
import oakum.portal.houserecord.ValueChange;

/**
 * One way to decide.
 *
 * @param id short name within the decision
 * @param changes what the record would say with it
 * @param note what speaks for or against it
 */
public record Alternative(String id, String title, List<ValueChange> changes, String note) {}
