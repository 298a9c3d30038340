/** Pressure that air loses in ducts. May import: calculation, numerics. */
@NullMarked
package oakum.physics.duct;

import org.jspecify.annotations.NullMarked;
