package oakum.physics.hygrothermal;

/** The water curve of a material read the other way round. */
final class WaterCurve {
    private static final int HALVINGS = 200;

    private WaterCurve() {}

    /** Coordinate at which a material holds this much water; the nearest end where it never does. */
    static double coordinateAt(LayerProperties properties, double waterKgPerM3) {
        double low = properties.coordinate(1e-6);
        double high = properties.coordinate(1);
        for (int i = 0; i < HALVINGS && high - low > 1e-15 * (Math.abs(low) + Math.abs(high)); i++) {
            double middle = 0.5 * (low + high);
            if (properties.waterKgPerM3(middle) < waterKgPerM3) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
