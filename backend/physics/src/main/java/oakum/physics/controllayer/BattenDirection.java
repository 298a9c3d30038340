package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** How the battens that carry a cladding run. */
public enum BattenDirection implements Labelled {
    VERTICAL("vertical battens"),
    HORIZONTAL("horizontal battens"),
    MAT("a drained mat, no battens");

    private final String label;

    BattenDirection(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
