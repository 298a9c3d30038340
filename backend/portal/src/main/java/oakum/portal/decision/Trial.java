package oakum.portal.decision;

import java.util.List;
import oakum.portal.houserecord.ValueChange;

/** Other values to be tried, without saving anything. */
public record Trial(String title, List<ValueChange> changes) {}
