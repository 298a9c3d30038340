/** The firm's weather years and how their tables are read. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation"})
@NullMarked
package oakum.portal.weather;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
