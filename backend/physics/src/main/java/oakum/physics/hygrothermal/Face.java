package oakum.physics.hygrothermal;

/**
 * How one face of a wall meets what is beside it.
 *
 * @param kind film, given state, or closed to heat and vapour
 * @param heatWPerM2K coefficient of heat transfer to the (equivalent) temperature, 0.1 to 1000; unused unless a film
 * @param vapourSPerM coefficient of vapour transfer, 1e-12 to 1e-2; unused unless a film
 */
public record Face(Kind kind, double heatWPerM2K, double vapourSPerM) {
    /** What stands beside a face. */
    public enum Kind {
        /** Air, through a film. */
        FILM,
        /** The climate's temperature and vapour pressure are the state of the surface itself; liquid passes too. */
        GIVEN,
        /** Neither heat nor moisture passes. */
        CLOSED
    }

    /** A face in air. */
    public static Face film(double heatWPerM2K, double vapourSPerM) {
        return new Face(Kind.FILM, heatWPerM2K, vapourSPerM);
    }

    /** A face whose surface state the climate prescribes. */
    public static Face given() {
        return new Face(Kind.GIVEN, Double.NaN, Double.NaN);
    }

    /** A face that nothing passes: a plane of symmetry, or the far end of a half space. */
    public static Face closed() {
        return new Face(Kind.CLOSED, Double.NaN, Double.NaN);
    }
}
