/** The composed view of each role; reads all, nobody reads it. */
@ApplicationModule(
        allowedDependencies = {
            "http",
            "people",
            "calculation",
            "houserecord",
            "houserecord :: standing",
            "decision",
            "site",
            "commissioning",
            "reading",
            "aftercare"
        })
@NullMarked
package oakum.portal.view;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
