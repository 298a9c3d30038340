/** Every calculation, in printed order. Imports all of physics; nobody in physics imports it. */
@NullMarked
package oakum.physics.catalogue;

import org.jspecify.annotations.NullMarked;
