package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** Where lengths and areas are measured; a bridge belongs to areas measured the same way (ISO 13789). */
public enum Dimensions implements Labelled {
    EXTERNAL("outside dimensions"),
    INTERNAL("inside dimensions, room by room"),
    OVERALL_INTERNAL("inside dimensions, overall");

    private final String label;

    Dimensions(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
