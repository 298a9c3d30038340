package oakum.portal.site;

import java.util.List;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A cover check in a list.
 *
 * @param code C9, shown small; the name comes first
 * @param number 9, as in "cover check 9"
 * @param stops why it may not be covered; empty when only signatures are missing
 * @param waitsFor whose signature it waits for, null when it waits for none
 */
public record CoverCheckListed(
        String code,
        int number,
        String title,
        String coveredBy,
        CoverCheckState state,
        String stateLabel,
        int rowCount,
        int answeredCount,
        List<RowStop> stops,
        List<LapsedApproval> lapsed,
        @Nullable Role waitsFor) {}
