/**
 * Walls, roofs and floors from their layers: thermal resistance, surface temperature, heat loss of the whole house, and
 * steady moisture. May import: calculation, numerics, moistair, material.
 */
@NullMarked
package oakum.physics.envelope;

import org.jspecify.annotations.NullMarked;
