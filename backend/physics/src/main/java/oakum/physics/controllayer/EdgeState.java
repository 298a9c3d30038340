package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** Whether water and air pass at an edge. */
public enum EdgeState implements Labelled {
    OPEN("open"),
    SEALED("sealed");

    private final String label;

    EdgeState(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
