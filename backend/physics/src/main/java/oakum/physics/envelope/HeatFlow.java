package oakum.physics.envelope;

/** Which way heat leaves, and what follows from it (ISO 6946:2007 table 1 and clause 5.3.2). */
enum HeatFlow {
    UP(0.10, 0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16),
    HORIZONTAL(0.13, 0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18),
    DOWN(0.17, 0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23);

    /** Air layers this thick or thicker are rooms: the table ends. */
    static final double THICKEST_AIR_LAYER_M = 0.3;

    private static final double[] THICKNESS_M = {0, 0.005, 0.007, 0.010, 0.015, 0.025, 0.050, 0.100, 0.300};

    private final double insideSurfaceM2KPerW;
    private final double[] airLayerM2KPerW;

    HeatFlow(double insideSurfaceM2KPerW, double... airLayerM2KPerW) {
        this.insideSurfaceM2KPerW = insideSurfaceM2KPerW;
        this.airLayerM2KPerW = airLayerM2KPerW;
    }

    static HeatFlow of(AssemblyKind kind) {
        return switch (kind) {
            case WALL, BASEMENT_WALL -> HORIZONTAL;
            case ROOF -> UP;
            case SLAB -> DOWN;
        };
    }

    double insideSurfaceM2KPerW() {
        return insideSurfaceM2KPerW;
    }

    /**
     * Resistance of an unventilated air layer between faces of ordinary building materials.
     *
     * @param thicknessM 0 to 0.3
     */
    double airLayerM2KPerW(double thicknessM) {
        int i = 1;
        while (i < THICKNESS_M.length - 1 && thicknessM > THICKNESS_M[i]) {
            i++;
        }
        double share = (thicknessM - THICKNESS_M[i - 1]) / (THICKNESS_M[i] - THICKNESS_M[i - 1]);
        return airLayerM2KPerW[i - 1] + share * (airLayerM2KPerW[i] - airLayerM2KPerW[i - 1]);
    }
}
