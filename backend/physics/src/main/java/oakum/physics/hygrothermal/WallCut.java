package oakum.physics.hygrothermal;

import oakum.physics.calculation.Labelled;

/** Where a framed wall is cut: heat and moisture are followed along one line only. */
public enum WallCut implements Labelled {
    THROUGH_FILL("between the framing"),
    THROUGH_FRAMING("through the framing");

    private final String label;

    WallCut(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
