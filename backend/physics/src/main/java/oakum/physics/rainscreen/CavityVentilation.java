package oakum.physics.rainscreen;

import oakum.physics.calculation.Labelled;

/** Ventilation of a vertical air layer as ISO 6946 classes it by its openings. */
public enum CavityVentilation implements Labelled {
    UNVENTILATED("unventilated"),
    SLIGHTLY_VENTILATED("slightly ventilated"),
    WELL_VENTILATED("well ventilated");

    /** Up to here a layer is unventilated. */
    public static final double SLIGHTLY_FROM_M2_PER_M = 500e-6;

    /** From here on a layer is well ventilated. */
    public static final double WELL_FROM_M2_PER_M = 1500e-6;

    private final String label;

    CavityVentilation(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    /** The class of a free opening area, m² for each metre of width. */
    public static CavityVentilation of(double freeM2PerM) {
        if (freeM2PerM <= SLIGHTLY_FROM_M2_PER_M) {
            return UNVENTILATED;
        }
        return freeM2PerM < WELL_FROM_M2_PER_M ? SLIGHTLY_VENTILATED : WELL_VENTILATED;
    }
}
