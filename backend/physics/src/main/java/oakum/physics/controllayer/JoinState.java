package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** How one control passes on at a junction. */
public enum JoinState implements Labelled {
    CONTINUOUS("the same layer runs through"),
    DETAIL("joined by a detail"),
    OPEN("not joined"),
    NOT_SAID("not said yet");

    private final String label;

    JoinState(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
