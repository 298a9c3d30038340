/** The drained and ventilated cavity behind a cladding: its airflow, how it dries, and the rules its plan must keep. */
@NullMarked
package oakum.physics.rainscreen;

import org.jspecify.annotations.NullMarked;
