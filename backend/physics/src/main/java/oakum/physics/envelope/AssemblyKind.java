package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** Which face of the envelope. */
public enum AssemblyKind implements Labelled {
    WALL("wall"),
    ROOF("roof"),
    SLAB("slab"),
    BASEMENT_WALL("basement wall");

    private final String label;

    AssemblyKind(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
