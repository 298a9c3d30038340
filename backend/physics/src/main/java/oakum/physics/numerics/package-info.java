/** Roots, fits and quantiles that the calculations share. Imports nobody. */
@NullMarked
package oakum.physics.numerics;

import org.jspecify.annotations.NullMarked;
