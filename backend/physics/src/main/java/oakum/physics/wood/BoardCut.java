package oakum.physics.wood;

import oakum.physics.calculation.Labelled;

/** How a board lies in the log. */
public enum BoardCut implements Labelled {
    FLAT_SAWN("flat-sawn: rings along the width"),
    QUARTER_SAWN("quarter-sawn: rings across the width");

    private final String label;

    BoardCut(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
