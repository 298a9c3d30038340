/** Printed packages and calendar feeds. */
@ApplicationModule(
        allowedDependencies = {
            "http",
            "people",
            "calculation",
            "houserecord",
            "decision",
            "site",
            "commissioning",
            "aftercare"
        })
@NullMarked
package oakum.portal.document;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
