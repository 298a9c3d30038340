/**
 * Weather by the hour at a place, from any table, a typical year, monthly normals or the house's own readings; where the
 * sun stands, what it sends on a tilted surface, and how cold the sky is.
 */
@NullMarked
package oakum.physics.weather;

import org.jspecify.annotations.NullMarked;
