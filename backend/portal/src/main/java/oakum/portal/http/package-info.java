/** How every module answers over HTTP: problem details, entity tags, idempotency keys, pages. Imports nobody. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package oakum.portal.http;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
