/** The portal: a modular monolith; every direct sub-package is a module that says whom it may import. */
@NullMarked
package oakum.portal;

import org.jspecify.annotations.NullMarked;
