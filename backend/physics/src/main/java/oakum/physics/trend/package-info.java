/** What readings tell over weeks and months: how a filter fills and when it is due. Imports moist air and filtration. */
@NullMarked
package oakum.physics.trend;

import org.jspecify.annotations.NullMarked;
