/** The materials that layers may name: those that come with the portal, and the firm's own. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation"})
@NullMarked
package oakum.portal.material;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
