package oakum.portal.people;

import java.util.List;
import java.util.UUID;

/** An account as the principal sees it. */
record PersonView(UUID id, String account, String displayName, boolean active, List<Me.Held> roles) {
    static PersonView of(Account account) {
        return new PersonView(
                account.id(), account.account(), account.displayName(), account.active(), People.held(account.roles()));
    }
}
