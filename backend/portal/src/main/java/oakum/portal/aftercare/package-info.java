/** Filters, rounds, visits and stock over all houses; what owners report. */
@ApplicationModule(
        allowedDependencies = {"http", "people", "calculation", "houserecord", "site", "commissioning", "reading"})
@NullMarked
package oakum.portal.aftercare;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
