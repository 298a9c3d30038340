/** Mould on surfaces, moisture criteria of wood and its decay, hour by hour from simulated or measured climates alike. */
@NullMarked
package oakum.physics.mould;

import org.jspecify.annotations.NullMarked;
