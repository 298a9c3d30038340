/** Air filters, the fine particles they take out, and the coil behind them. Imports moist air only. */
@NullMarked
package oakum.physics.filtration;

import org.jspecify.annotations.NullMarked;
