package oakum.physics.mould;

import oakum.physics.calculation.Labelled;

/** What the index does in hours at or below 0 °C; implementations of the model differ here. */
public enum BelowFreezingMould implements Labelled {
    DECLINES("declines as in any unfavourable hour"),
    STANDS("stands still, and so does the clock of the decline");

    private final String label;

    BelowFreezingMould(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
