/** Houses, their parts and revisions, proofs and their standing, baselines. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation"})
@NullMarked
package oakum.portal.houserecord;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
