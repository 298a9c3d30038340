package oakum.portal.people;

import static oakum.portal.people.Role.CONSULTANT;
import static oakum.portal.people.Role.DESIGNER;
import static oakum.portal.people.Role.MECHANICAL_CONTRACTOR;
import static oakum.portal.people.Role.OFFICE_MANAGER;
import static oakum.portal.people.Role.OWNER;
import static oakum.portal.people.Role.SITE_LEAD;

import java.util.EnumSet;
import java.util.Set;

/** What a role may do; the principal may do everything. */
public enum Permission {
    /** See the house, its record, decisions, checks and follow-ups. */
    VIEW_HOUSE(DESIGNER, SITE_LEAD, MECHANICAL_CONTRACTOR, OFFICE_MANAGER, OWNER, CONSULTANT),
    /** Make houses and change their parts. */
    EDIT_RECORD(DESIGNER),
    /** Bind, recompute and keep proofs; take a trial. */
    EDIT_PROOF(DESIGNER, CONSULTANT),
    /** Add weather years and the column maps of their tables, for all houses. */
    KEEP_WEATHER(DESIGNER, CONSULTANT),
    /** Open and change decisions. */
    EDIT_DECISION(DESIGNER),
    /** Add own materials for all houses, and withdraw them. */
    KEEP_MATERIALS(DESIGNER, CONSULTANT),
    /** Approve where the decision names the role. */
    APPROVE(DESIGNER, SITE_LEAD, MECHANICAL_CONTRACTOR, OFFICE_MANAGER, OWNER, CONSULTANT),
    COMMENT(DESIGNER, SITE_LEAD, MECHANICAL_CONTRACTOR, OFFICE_MANAGER, OWNER, CONSULTANT),
    /** Answer rows of a cover check, move a running clock. */
    ANSWER_CHECK(SITE_LEAD, MECHANICAL_CONTRACTOR),
    SIGN_CHECK(SITE_LEAD),
    /** Send photos of the house. */
    KEEP_PHOTO(SITE_LEAD, MECHANICAL_CONTRACTOR, OFFICE_MANAGER, OWNER),
    /** Enter measured values on a setting-to-work sheet. */
    MEASURE(SITE_LEAD, MECHANICAL_CONTRACTOR),
    VIEW_READINGS(DESIGNER, SITE_LEAD, OFFICE_MANAGER, OWNER, CONSULTANT),
    WRITE_READINGS(DESIGNER, OFFICE_MANAGER),
    MANAGE_SENSORS(DESIGNER, OFFICE_MANAGER),
    /** Plan rounds, make and close visits, keep stock. */
    PLAN_AFTERCARE(OFFICE_MANAGER),
    /** Tell the office what was seen in the house. */
    REPORT(OFFICE_MANAGER, OWNER),
    VIEW_REPORTS(DESIGNER, SITE_LEAD, MECHANICAL_CONTRACTOR, OFFICE_MANAGER, OWNER),
    /** Hold or release an order line. */
    HOLD_ORDER(OFFICE_MANAGER, DESIGNER),
    /** Give and withdraw access to a house. */
    SHARE_HOUSE(),
    /** See accounts; see who did what. */
    MANAGE_PEOPLE(),
    VIEW_AUDIT();

    private final Set<Role> roles;

    Permission(Role... roles) {
        Set<Role> all = EnumSet.of(Role.PRINCIPAL);
        all.addAll(Set.of(roles));
        this.roles = Set.copyOf(all);
    }

    /** Whether one of the roles holds it. */
    public boolean heldBy(Set<Role> held) {
        return held.stream().anyMatch(roles::contains);
    }
}
