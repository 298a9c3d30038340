/** Decisions with alternatives, reasons, proofs and approvals, and what a change reaches. */
@ApplicationModule(allowedDependencies = {"http", "people", "calculation", "houserecord", "houserecord::standing"})
@NullMarked
package oakum.portal.decision;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
