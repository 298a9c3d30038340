package oakum.portal.people;

import java.util.UUID;

/**
 * Who makes this request.
 *
 * @param personId the account
 * @param account the name used to sign in
 * @param displayName as shown: a role title, "mechanical contractor"
 * @param token whether a machine speaks for the person
 */
public record Caller(UUID personId, String account, String displayName, boolean token) {}
