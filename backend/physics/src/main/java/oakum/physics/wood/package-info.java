/** Wood as a material: the moisture it comes to, how it shrinks and moves, and how it carries heat. */
@NullMarked
package oakum.physics.wood;

import org.jspecify.annotations.NullMarked;
