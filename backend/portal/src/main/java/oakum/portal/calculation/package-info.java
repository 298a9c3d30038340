/** The catalogue of calculations over HTTP; computes and stores nothing. */
@ApplicationModule(allowedDependencies = {"http", "people"})
@NullMarked
package oakum.portal.calculation;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
