package oakum.physics.hygrothermal;

/**
 * Moisture that reaches the inside of a wall other than through its faces.
 *
 * @param kind what brings it
 * @param layer index of the solid layer in which it lands
 * @param side at which face of that layer
 * @param depthM over how much of the layer from that face it is spread, above 0 up to the layer's thickness
 * @param share for rain: the share of the rain on the wall that lands here, 0 to 1; for an air leak a factor on the
 *     climate's leakage flow, 0 to 10
 */
public record MoistureSource(Kind kind, int layer, Side side, double depthM, double share) {
    /** Depth over which a source is spread unless told otherwise (common practice, no published source). */
    public static final double USUAL_DEPTH_M = 0.005;

    /** What brings the moisture. */
    public enum Kind {
        /** A share of the rain on the wall, taken up as far as the place can bind it; the rest runs off. */
        RAIN,
        /** Indoor air that leaks to this place and leaves there what it cannot hold at its temperature. */
        AIR_LEAK
    }

    /** A face of a layer. */
    public enum Side {
        INNER,
        OUTER
    }
}
