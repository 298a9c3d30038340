package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** In which houses a make-up air rule holds. */
public enum TriggerScope implements Labelled {
    ROOM_AIR_APPLIANCE("only with an appliance inside that is neither direct-vent nor mechanical-draft"),
    EVERY_HOUSE("in every house");

    private final String label;

    TriggerScope(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
