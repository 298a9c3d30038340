package oakum.physics.hygrothermal;

/**
 * A layer of one material.
 *
 * @param name as people call it
 * @param thicknessM 0.0001 to 30
 * @param properties how the material carries and stores heat and moisture
 * @param densityKgPerM3 dry density, 5 to 12000: turns water into mass %
 * @param heatCapacityJPerKgK of the dry material, 100 to 5000
 * @param initialHumidityFraction relative humidity with which the layer starts in balance, 0 to 1
 */
public record SolidLayer(
        String name,
        double thicknessM,
        LayerProperties properties,
        double densityKgPerM3,
        double heatCapacityJPerKgK,
        double initialHumidityFraction)
        implements WallLayer {

    /** The same layer starting with this much water (built-in moisture), kg/m³, 0 to its saturation. */
    public SolidLayer startingWithWater(double waterKgPerM3) {
        return new SolidLayer(
                name,
                thicknessM,
                properties,
                densityKgPerM3,
                heatCapacityJPerKgK,
                properties.relativeHumidity(WaterCurve.coordinateAt(properties, waterKgPerM3)));
    }
}
