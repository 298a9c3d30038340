/** Setting to work: measured values against the design. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation", "houserecord", "site"})
@NullMarked
package oakum.portal.commissioning;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
