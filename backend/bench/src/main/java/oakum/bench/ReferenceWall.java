package oakum.bench;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.hygrothermal.AirLayer;
import oakum.physics.hygrothermal.Face;
import oakum.physics.hygrothermal.LayerProperties;
import oakum.physics.hygrothermal.MembraneLayer;
import oakum.physics.hygrothermal.Plane;
import oakum.physics.hygrothermal.SolidLayer;
import oakum.physics.hygrothermal.TabulatedProperties;
import oakum.physics.hygrothermal.Wall;
import oakum.physics.hygrothermal.WallLayer;

/**
 * The wall of the speed comparison: gypsum board, retarder, 305 mm cellulose, sheathing, membrane, ventilated cavity,
 * wood cladding, on the graded grid of the reference kernel. Figures of the order published for such materials, not
 * design data.
 */
final class ReferenceWall {
    private static final double AIR = 2.0e-10;

    /** Layers of {@link #wall}, membranes counted. */
    static final int SHEATHING = 3;

    private ReferenceWall() {}

    static Wall wall(double scale) {
        List<WallLayer> layers = List.of(
                board("gypsum board", 0.0127, 625, 870, 0.16, 0.5, 400, 6.5, 8, 5, 0.05),
                MembraneLayer.constant("retarder", 1.0 * scale),
                board("cellulose", 0.305 * scale, 60, 2000, 0.038, 0.5, 400, 7.0, 1.7, 1.5, 0.002),
                board("sheathing", 0.012, 620, 1880, 0.11, 1.5, 470, 75, 180, 50, 0.002),
                MembraneLayer.constant("membrane", 0.05),
                // the two half thicknesses of air of 0.13 W/(mK) and a resistance factor of 0.7
                new AirLayer("cavity", 0.019, 0.13 / 0.0095, AIR / 0.7 / 0.0095, true, 0.7),
                board("cladding", 0.018, 450, 1880, 0.10, 1.5, 500, 60, 130, 20, 0.004));
        return new Wall(
                layers,
                Face.film(8, 2.5e-8),
                Face.film(17, 1e-7),
                List.of(
                        new Plane("cellulose, outer face", 2, 0.305 * scale),
                        new Plane("sheathing, middle", SHEATHING, 0.00625)),
                List.of());
    }

    private static SolidLayer board(
            String name,
            double thickness,
            double density,
            double heatCapacity,
            double conductivity,
            double byWater,
            double full,
            double atEighty,
            double dryMu,
            double wetMu,
            double absorption) {
        double b = 0.8 * (full - atEighty) / (0.8 * full - atEighty);
        double diffusivity = 3.8 * absorption * absorption / (full * full);
        LayerProperties properties = new TabulatedProperties.Description(
                        h -> water(full, b, h),
                        h -> 1 / (AIR / dryMu + (AIR / wetMu - AIR / dryMu) * h * h * h),
                        h -> diffusivity
                                * full
                                / Math.log(1000)
                                * (Math.pow(1000, water(full, b, h) / full - 1) - 0.001),
                        h -> conductivity * (1 + byWater / density * water(full, b, h)))
                .overHumidity();
        return new SolidLayer(name, thickness, properties, density, heatCapacity, 0.7);
    }

    private static double water(double full, double b, double humidity) {
        return full * (b - 1) * humidity / (b - humidity);
    }

    /** Cells of the reference kernel; it has one more, since its cavity has two. */
    static List<double[]> grid(double scale) {
        List<double[]> cells = new ArrayList<>();
        cells.add(graded(0.0127, 6, 1.15));
        cells.add(new double[0]);
        cells.add(graded(0.305 * scale, 44, 1.22));
        cells.add(graded(0.012, 16, 1.15));
        cells.add(new double[0]);
        cells.add(new double[] {0.019});
        cells.add(graded(0.018, 16, 1.15));
        return cells;
    }

    private static double[] graded(double thickness, int count, double ratio) {
        double[] widths = new double[count];
        double sum = 0;
        for (int k = 0; k < count; k++) {
            widths[k] = Math.pow(ratio, Math.min(14, Math.min(k, count - 1 - k)));
            sum += widths[k];
        }
        for (int k = 0; k < count; k++) {
            widths[k] *= thickness / sum;
        }
        return widths;
    }
}
