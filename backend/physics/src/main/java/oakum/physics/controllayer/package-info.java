/**
 * Whether the layers that hold back water, air, vapour and heat close around the conditioned volume, and the usual
 * mistakes of an assembly. May import: calculation, numerics, material, envelope.
 */
@NullMarked
package oakum.physics.controllayer;

import org.jspecify.annotations.NullMarked;
