package oakum.portal.site;

import java.time.LocalDate;
import oakum.portal.people.Role;

/**
 * Something that another part of the portal found open.
 *
 * @param title what is open, one sentence
 * @param because why it matters, one sentence
 * @param ownerRole who mends it
 * @param dueOn by which day of the house's calendar
 * @param originKey names it within its origin; while one of that key is open no second is made
 * @param wantsAfterPhoto whether closing needs a photo of how it is now
 */
public record RaisedLooseEnd(
        String houseId,
        String title,
        String because,
        Role ownerRole,
        LocalDate dueOn,
        LooseEndOrigin origin,
        String originKey,
        boolean wantsAfterPhoto) {}
