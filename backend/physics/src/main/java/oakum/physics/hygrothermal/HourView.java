package oakum.physics.hygrothermal;

/**
 * The wall at the end of one hour, computed as it is asked for. One object is used for all hours of a run: copy what
 * should outlive the call.
 */
public interface HourView {
    /** Number of hours since the start of the run: 1 after the first. */
    int hour();

    /** Number of layers, membranes counted; their index is their place from inside. */
    int layers();

    /** Mean water of a layer, kg/m³; 0 for a membrane. */
    double layerWaterKgPerM3(int layer);

    /** Mean water of the wettest 5 mm of a layer (of the whole layer where it is thinner), kg/m³; 0 for a membrane. */
    double layerWorstWaterKgPerM3(int layer);

    /** Number of named planes. */
    int planes();

    /** Temperature at a plane, °C. */
    double planeTemperatureC(int plane);

    /** Relative humidity at a plane, fraction, over ice below 0 °C; above 1 where more water stands than can be bound. */
    double planeHumidity(int plane);

    /** Temperature of the indoor face, °C. */
    double insideFaceTemperatureC();

    /** Relative humidity at the indoor face, fraction. */
    double insideFaceHumidity();

    /** Temperature of the outdoor face, °C. */
    double outsideFaceTemperatureC();

    /** Relative humidity at the outdoor face, fraction. */
    double outsideFaceHumidity();

    /** Moisture through the indoor face over the hour, into the wall positive, kg/m². */
    double insideMoistureKgPerM2();

    /** Moisture through the outdoor face over the hour, rain included, into the wall positive, kg/m². */
    double outsideMoistureKgPerM2();

    /** Heat from the room into the wall over the hour, latent heat of the vapour included, J/m². */
    double insideHeatJPerM2();

    /** All water in the wall, kg/m². */
    double waterKgPerM2();
}
