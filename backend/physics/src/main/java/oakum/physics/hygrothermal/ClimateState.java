package oakum.physics.hygrothermal;

/**
 * What surrounds a wall at one instant. One object is filled again and again, hence fields: a run asks some twenty
 * thousand times a year.
 */
public final class ClimateState {
    /** Outdoor air, °C: what passes a ventilated cavity. */
    public double outdoorTemperatureC;

    /** Temperature that the outer film sees, sun and sky included, °C; of the surface itself where its state is given. */
    public double outdoorEquivalentC;

    /** Vapour pressure outdoors, Pa. */
    public double outdoorVapourPa;

    /** Rain that reaches the outer face, kg/(m² s). */
    public double rainKgPerM2S;

    /** Temperature that the inner film sees, °C. */
    public double indoorTemperatureC;

    /** Vapour pressure indoors, Pa. */
    public double indoorVapourPa;

    /** Air that flows through the whole wall, outward positive, m³/(m² s). */
    public double airflowM3PerM2S;

    /** Indoor air that leaks to the place of an air-leak source, m³/(m² s). */
    public double leakM3PerM2S;

    /** Outdoor air that passes ventilated cavities, air changes per hour. */
    public double cavityAirChangesPerHour;

    /** Takes every value from another state. */
    public void set(ClimateState other) {
        outdoorTemperatureC = other.outdoorTemperatureC;
        outdoorEquivalentC = other.outdoorEquivalentC;
        outdoorVapourPa = other.outdoorVapourPa;
        rainKgPerM2S = other.rainKgPerM2S;
        indoorTemperatureC = other.indoorTemperatureC;
        indoorVapourPa = other.indoorVapourPa;
        airflowM3PerM2S = other.airflowM3PerM2S;
        leakM3PerM2S = other.leakM3PerM2S;
        cavityAirChangesPerHour = other.cavityAirChangesPerHour;
    }
}
