/** Runs a real PostgreSQL beside the portal when no other server is given. Imports nobody. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package oakum.portal.localdb;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
