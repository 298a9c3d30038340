/**
 * What still stands: a pure function of today's values and of what each proof relied on. No framework, no database, no
 * clock; everything is computed by comparing texts.
 */
@NamedInterface("standing")
@NullMarked
package oakum.portal.houserecord.standing;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
