package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** The fuel-burning appliances inside the house's air barrier. */
public enum Appliances implements Labelled {
    NONE("none: nothing burns fuel in the house"),
    SEALED("only direct-vent or mechanical-draft appliances"),
    ROOM_AIR("at least one that takes air from the rooms (natural draft, open fire, stove)");

    private final String label;

    Appliances(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
