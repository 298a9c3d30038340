/** The invented demo firm and its houses, loaded once into an empty database. */
@ApplicationModule(
        allowedDependencies = {
            "people",
            "calculation",
            "houserecord",
            "decision",
            "site",
            "commissioning",
            "reading",
            "aftercare"
        })
@NullMarked
package oakum.portal.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
