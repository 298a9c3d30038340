/** Sensors and their readings: ingestion, roll-ups, charts. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation", "houserecord"})
@NullMarked
package oakum.portal.reading;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
