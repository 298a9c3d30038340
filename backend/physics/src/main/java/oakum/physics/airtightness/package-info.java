/** How tight a house is: the fan-pressurisation test, leakage areas, and what leaks in by wind and stack. */
@NullMarked
package oakum.physics.airtightness;

import org.jspecify.annotations.NullMarked;
