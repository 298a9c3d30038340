/** Runs of calculations that take long, as jobs: what was asked, what came of it, and the year to look through. */
@ApplicationModule(
        allowedDependencies = {"http", "people", "calculation", "houserecord", "houserecord :: standing", "job"})
@NullMarked
package oakum.portal.simulation;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
