/** Moist air: states, saturation, wet bulb, and the pressure of the standard atmosphere. */
@NullMarked
package oakum.physics.moistair;

import org.jspecify.annotations.NullMarked;
