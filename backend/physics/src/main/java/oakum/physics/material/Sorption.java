package oakum.physics.material;

/** Water that a material holds in balance with air, kg per m³ of material. */
public interface Sorption {
    /**
     * Water content.
     *
     * @param humidityFraction 0 to 1
     */
    double waterKgPerM3(double humidityFraction);

    /**
     * Slope of the water content over relative humidity (1 = 100 %), kg/m³; at a kink that of the wetter side.
     *
     * @param humidityFraction 0 to 1
     */
    double slopeKgPerM3(double humidityFraction);

    /**
     * Relative humidity in balance with a water content; where a range of humidities gives the same content, its driest.
     *
     * @param waterKgPerM3 0 to the water at saturation
     */
    double humidityFraction(double waterKgPerM3);

    /** Water at 100 % relative humidity, w_f. */
    double saturationKgPerM3();
}
