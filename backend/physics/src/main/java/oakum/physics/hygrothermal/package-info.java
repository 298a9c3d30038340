/** Heat and moisture through a wall over years: the transient calculation of EN 15026 in one dimension. */
@NullMarked
package oakum.physics.hygrothermal;

import org.jspecify.annotations.NullMarked;
