package oakum.physics.hygrothermal;

/**
 * What a material does with heat and moisture, as the solver asks for it: for a whole run of cells at once, with the
 * slope of every property, so that an implementation is one plain loop.
 *
 * <p>Each material has its own moisture coordinate, any quantity that rises without limit of slope as the material
 * takes up water: the relative humidity itself suits a sorption table, the negative logarithm of suction a retention
 * curve. The solver steps in that coordinate and keeps the water content as conserved quantity beside it.
 */
public interface LayerProperties {
    /** Moisture coordinate in balance with air of this relative humidity, 0 to 1. */
    double coordinate(double relativeHumidityFraction);

    /** Relative humidity of pore air at this coordinate; may pass 1 where a cell holds more than it can bind. */
    double relativeHumidity(double coordinate);

    /** Water at this coordinate, kg/m³; rises with it. */
    double waterKgPerM3(double coordinate);

    /** Water at relative humidity 1, kg/m³, above 0: the scale of errors in water content. */
    double saturationKgPerM3();

    /**
     * Liquid potential Θ, kg/(m s): the integral of liquid conductivity over its driving potential from dry. Inside one
     * material the liquid flow between two points is the difference of Θ over their distance, without any averaging of
     * a steep conductivity. 0 everywhere in a material that does not carry liquid.
     */
    double liquidPotentialKgPerMS(double coordinate);

    /** Whether liquid can pass at all: otherwise rain runs off and no liquid crosses to a neighbour. */
    boolean carriesLiquid();

    /**
     * Fills water, humidity, resistivities, liquid potential and their slopes from temperature and coordinate.
     *
     * @param cells where to read and write
     * @param from first cell of this material
     * @param to one beyond its last cell
     */
    void evaluate(Cells cells, int from, int to);

    /**
     * Shortens what one iteration of the solver may change, so that it stays where the properties have a meaning.
     *
     * @param from coordinates of all cells
     * @param to where the iteration asks to go; shortened in place
     * @param first first cell of this material
     * @param end one beyond its last cell
     * @return whether any was shortened
     */
    boolean limit(double[] from, double[] to, int first, int end);

    /** How many kelvin one unit of the coordinate weighs when the solver judges whether a step has converged. */
    double coordinateWeightK();
}
