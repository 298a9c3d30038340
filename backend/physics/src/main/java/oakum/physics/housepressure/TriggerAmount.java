package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** How much make-up air a rule requires. */
public enum TriggerAmount implements Labelled {
    WHOLE_EXHAUST("about as much as the exhaust"),
    ABOVE_THRESHOLD("only what is above the threshold");

    private final String label;

    TriggerAmount(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
