package oakum.physics.hygrothermal;

/**
 * A named depth in a wall at which temperature and relative humidity are reported.
 *
 * @param name as people call it
 * @param layer index of a layer with thickness, counted from inside, membranes counted too
 * @param depthInLayerM from the layer's inner face, 0 to its thickness
 */
public record Plane(String name, int layer, double depthInLayerM) {}
