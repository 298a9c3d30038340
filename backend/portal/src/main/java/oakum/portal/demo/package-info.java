/** The invented demo firm and its houses, loaded once into an empty database. */
@ApplicationModule(
        allowedDependencies = {
            "http",
            "people",
            "calculation",
            "weather",
            "houserecord",
            "houserecord :: standing",
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
