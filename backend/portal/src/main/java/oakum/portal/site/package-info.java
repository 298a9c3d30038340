/** Cover checks with photos, running clocks, loose ends. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation", "houserecord", "decision"})
@NullMarked
package oakum.portal.site;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
