/** Long work that a person asked for: it waits, runs on any instance, tells how far it is, and can be cancelled. */
@ApplicationModule(allowedDependencies = {"http", "people", "houserecord"})
@NullMarked
package oakum.portal.job;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
