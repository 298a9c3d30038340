package oakum.physics.hygrothermal;

/**
 * The cells of a wall from inside to outside: state, and the properties that follow from it. Arrays of numbers, since
 * {@link LayerProperties} fills them in the innermost loop; only the solver and the properties see them.
 */
public final class Cells {
    /** Number of cells. */
    public final int count;

    /** State: temperature, °C. */
    public final double[] temperatureC;

    /** State: moisture coordinate, see {@link LayerProperties}. */
    public final double[] coordinate;

    /** Relative humidity of pore air, fraction. */
    public final double[] humidity;

    /** Slope of {@link #humidity} with the coordinate. */
    public final double[] humiditySlope;

    /** Water, kg/m³. */
    public final double[] water;

    /** Slope of {@link #water} with the coordinate. */
    public final double[] waterSlope;

    /** Resistivity to vapour 1/δ, m s Pa/kg. */
    public final double[] vapourResistivity;

    /** Slope of {@link #vapourResistivity} with the coordinate. */
    public final double[] vapourResistivitySlope;

    /** Slope of {@link #vapourResistivity} with temperature, per K. */
    public final double[] vapourResistivityPerK;

    /** Liquid potential, kg/(m s). */
    public final double[] liquidPotential;

    /** Slope of {@link #liquidPotential} with the coordinate. */
    public final double[] liquidPotentialSlope;

    /** Resistivity to heat 1/λ, m K/W. */
    public final double[] heatResistivity;

    /** Slope of {@link #heatResistivity} with the coordinate. */
    public final double[] heatResistivitySlope;

    /** Slope of {@link #heatResistivity} with temperature, per K. */
    public final double[] heatResistivityPerK;

    /** Heat capacity of the dry material, J/(m³ K). */
    public final double[] dryHeatCapacity;

    Cells(int count) {
        this.count = count;
        temperatureC = new double[count];
        coordinate = new double[count];
        humidity = new double[count];
        humiditySlope = new double[count];
        water = new double[count];
        waterSlope = new double[count];
        vapourResistivity = new double[count];
        vapourResistivitySlope = new double[count];
        vapourResistivityPerK = new double[count];
        liquidPotential = new double[count];
        liquidPotentialSlope = new double[count];
        heatResistivity = new double[count];
        heatResistivitySlope = new double[count];
        heatResistivityPerK = new double[count];
        dryHeatCapacity = new double[count];
    }
}
