package oakum.portal.decision;

import java.util.List;
import oakum.portal.people.Role;

/**
 * A decision that every house of this kind needs, as the firm's table has it.
 *
 * @param usualAlternatives in words
 * @param proofNeeded in words
 */
record DecisionKind(
        String code,
        String title,
        String usualAlternatives,
        String proofNeeded,
        String group,
        List<Role> approvers,
        List<String> outsideApprovers,
        boolean safetyList) {

    DecisionContent emptyContent() {
        return new DecisionContent(
                title,
                title + "?",
                group,
                null,
                List.of(),
                "",
                List.of(),
                approvers,
                outsideApprovers,
                safetyList,
                List.of(),
                List.of(),
                null);
    }
}
