package oakum.portal.decision;

import java.util.List;
import java.util.UUID;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/** The decisions of a house, for other modules. Every method asks who is calling. */
public interface Decisions {
    /** All decisions of a house with how they stand. */
    List<DecisionView> list(String houseId);

    /**
     * One decision.
     *
     * @throws oakum.portal.http.Problem 404 where the house has none of that code
     */
    DecisionView find(String houseId, String code);

    /**
     * Opens a decision.
     *
     * @param code one of the usual decisions (D01 to D48), or a code of the house's own: a capital letter and two or
     *     three digits
     * @param content what to write of it; null takes title, approvers and safety list from the usual decisions
     */
    DecisionView open(String houseId, String code, @Nullable DecisionContent content);

    /** Writes a decision anew, made from its present version. */
    DecisionView write(String houseId, String code, DecisionContent content);

    /** Adds a remark. */
    DecisionView say(String houseId, String code, String text);

    /**
     * Approves exactly what the copy code stands for; a second time changes nothing.
     *
     * @throws oakum.portal.http.Problem 409 {@code not-what-stands} where that is no longer what stands
     */
    DecisionView approve(String houseId, String code, String copyCode, Role role);

    /**
     * The same where a proof fails.
     *
     * @param exception why it is approved all the same, kept with it, or null. It is needed where a leading result
     *     fails, and possible where any does. On the safety list only
     *     the principal gives one; once it stands, the other roles approve under it
     * @throws oakum.portal.http.Problem 409 {@code verdict-fails} where it is needed and missing
     */
    DecisionView approve(String houseId, String code, String copyCode, Role role, @Nullable String exception);

    /** Withdraws an approval; whoever gave it may, and the principal. */
    DecisionView withdraw(String houseId, String code, UUID approval, String reason);

    /** Says how far an order line has come. */
    DecisionView order(String houseId, String code, String line, OrderLine.State state, String note);
}
