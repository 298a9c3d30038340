/** Filters, rounds, visits and stock over all houses. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation", "houserecord", "reading"})
@NullMarked
package oakum.portal.aftercare;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
