/** What building materials are made of, in numbers, each with where it comes from: heat, vapour, water, air, mould. */
@NullMarked
package oakum.physics.material;

import org.jspecify.annotations.NullMarked;
