package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** How the boards of a cladding run. */
public enum BoardDirection implements Labelled {
    HORIZONTAL("horizontal boards"),
    VERTICAL("vertical boards"),
    DIAGONAL("diagonal boards"),
    SHINGLES("shingles, panels or masonry");

    private final String label;

    BoardDirection(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
