/**
 * What a wall or roof stands in, hour by hour: air, sun and sky outside, rain driven against it, the air inside, and how
 * much of that air leaks in.
 */
@NullMarked
package oakum.physics.exposure;

import org.jspecify.annotations.NullMarked;
