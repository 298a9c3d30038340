package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** What lies outside of an assembly. */
public enum Outside implements Labelled {
    OUTDOOR_AIR("outdoor air"),
    VENTED_ATTIC("a vented attic under its own roof"),
    GROUND("the ground");

    private final String label;

    Outside(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
