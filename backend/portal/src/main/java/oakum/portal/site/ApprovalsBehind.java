package oakum.portal.site;

import java.util.Collection;
import java.util.List;

/** What site work asks about the decisions it rests on. */
interface ApprovalsBehind {
    /** Those of the decisions whose approval has lapsed or was withdrawn, with what changed. */
    List<LapsedApproval> lapsed(String houseId, Collection<String> decisionCodes);
}
