package oakum.portal.decision;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import oakum.portal.houserecord.ValueChange;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * Everything of a decision that people write.
 *
 * @param chosenAlternative id of the chosen one, or null while it is open
 * @param reason why it was chosen
 * @param proofs keys of the proofs behind it
 * @param approvers the roles that must approve
 * @param outsideApprovers who else must agree, in words: "licensed trade"
 * @param safetyList whether any changed input lapses an approval
 * @param governs paths of the record that this decision settles; where none are named, those that its alternatives
 *     change. An alternative may also change what another decision settles, as a smaller hood instead of more make-up air
 * @param dueOn the day by which it should be settled, or null
 */
public record DecisionContent(
        String title,
        String question,
        String group,
        @Nullable String chosenAlternative,
        List<Alternative> alternatives,
        String reason,
        List<String> proofs,
        List<Role> approvers,
        List<String> outsideApprovers,
        boolean safetyList,
        List<String> governs,
        List<OrderLine> orders,
        @Nullable LocalDate dueOn) {

    /** Every path that this decision settles. */
    Set<String> governedPaths() {
        if (!governs.isEmpty()) {
            return new LinkedHashSet<>(governs);
        }
        Set<String> paths = new LinkedHashSet<>();
        for (Alternative alternative : alternatives) {
            alternative.changes().stream().map(ValueChange::path).forEach(paths::add);
        }
        return paths;
    }

    DecisionContent with(List<Alternative> others) {
        return new DecisionContent(
                title,
                question,
                group,
                chosenAlternative,
                others,
                reason,
                proofs,
                approvers,
                outsideApprovers,
                safetyList,
                governs,
                orders,
                dueOn);
    }

    DecisionContent choosing(String alternative, String why) {
        return new DecisionContent(
                title,
                question,
                group,
                alternative,
                alternatives,
                why,
                proofs,
                approvers,
                outsideApprovers,
                safetyList,
                governs,
                orders,
                dueOn);
    }

    DecisionContent ordering(List<OrderLine> lines) {
        return new DecisionContent(
                title,
                question,
                group,
                chosenAlternative,
                alternatives,
                reason,
                proofs,
                approvers,
                outsideApprovers,
                safetyList,
                governs,
                lines,
                dueOn);
    }
}
