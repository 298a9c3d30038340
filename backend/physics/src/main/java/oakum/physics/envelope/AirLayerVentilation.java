package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** How much outdoor air moves through an air layer. */
public enum AirLayerVentilation implements Labelled {
    NONE("not ventilated"),
    SLIGHTLY("slightly ventilated"),
    WELL("well ventilated");

    private final String label;

    AirLayerVentilation(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
