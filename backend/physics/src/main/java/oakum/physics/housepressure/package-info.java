/**
 * What exhaust does to the pressure of a tight house: exhaust devices, make-up air, tempering heater, door force, dryer
 * ducts, and the rules of some places. May import: calculation, numerics, moistair, airtightness, duct.
 */
@NullMarked
package oakum.physics.housepressure;

import org.jspecify.annotations.NullMarked;
