package oakum.physics.hygrothermal;

import java.util.Arrays;

/**
 * How layers are divided into cells: fine at both faces of a layer, coarser towards its middle.
 *
 * @param firstCellM widest cell at a face of a layer, 1e-6 to 0.01; at most 0.0005 where a face can be wet
 * @param growth ratio of one cell to the next, 1 to 2
 * @param widestCellM widest cell anywhere, at least the first one
 * @param refinement into how many equal parts each cell is divided once more, 1 to 32; for grid studies
 */
public record GridRule(double firstCellM, double growth, double widestCellM, int refinement) {
    private static final int FEWEST_CELLS = 4;

    /** Half a millimetre at faces, each cell 1.35 times its neighbour, 50 mm at most. */
    public static GridRule usual() {
        return new GridRule(0.0005, 1.35, 0.05, 1);
    }

    /** The same rule with each cell divided into equal parts. */
    public GridRule refined(int parts) {
        return new GridRule(firstCellM, growth, widestCellM, parts);
    }

    /** Widths of the cells of a layer, from inside to outside, m; they sum to its thickness. */
    double[] cells(double thicknessM) {
        double[] half = new double[64];
        int n = 0;
        double sum = 0;
        double width = firstCellM;
        while (sum < 0.5 * thicknessM || n < FEWEST_CELLS / 2) {
            if (n == half.length) {
                half = Arrays.copyOf(half, 2 * n);
            }
            half[n++] = width;
            sum += width;
            width = Math.min(width * growth, widestCellM);
        }
        double scale = 0.5 * thicknessM / sum;
        double[] widths = new double[2 * n * refinement];
        for (int i = 0; i < 2 * n; i++) {
            double one = scale * half[i < n ? i : 2 * n - 1 - i] / refinement;
            Arrays.fill(widths, i * refinement, (i + 1) * refinement, one);
        }
        return widths;
    }
}
