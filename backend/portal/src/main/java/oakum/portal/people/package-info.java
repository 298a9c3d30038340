/** Accounts, roles, tokens, sign-in, who may see which house, and the audit trail. */
@ApplicationModule(allowedDependencies = {"http"})
@NullMarked
package oakum.portal.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
