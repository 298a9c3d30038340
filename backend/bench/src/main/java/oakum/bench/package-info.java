/** Benchmarks: ratios of this project's kernels to others run alternately in the same run; nothing here is a test. */
@NullMarked
package oakum.bench;

import org.jspecify.annotations.NullMarked;
