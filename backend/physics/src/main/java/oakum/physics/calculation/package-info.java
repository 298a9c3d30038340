/**
 * How a calculation is declared: its inputs and outputs with units, limits and sources, and the function itself. One
 * declaration gives the Java function, the HTTP operation, the form, the printed section, the docs page and the proof.
 * Imports nobody.
 */
@NullMarked
package oakum.physics.calculation;

import org.jspecify.annotations.NullMarked;
