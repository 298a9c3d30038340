/** What holds a cladding on: withdrawal of fasteners, wind suction, corrosion, and furring over exterior insulation. */
@NullMarked
package oakum.physics.fastening;

import org.jspecify.annotations.NullMarked;
