package oakum.portal.people;

import java.io.Serializable;
import java.security.Principal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Who is signed in, and nothing that could be out of date: names and roles are read anew for every request.
 *
 * @param id the account
 * @param tokenId the token by which a machine signed in, or null
 */
record Person(UUID id, @Nullable UUID tokenId) implements Principal, Serializable {
    /** The portal itself; its account stands in the database from the beginning and nobody can sign in with it. */
    static final Person PORTAL = new Person(new UUID(0, 0), null);

    @Override
    public String getName() {
        return id.toString();
    }
}
