package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** When an exhaust device runs. */
public enum Running implements Labelled {
    SOMETIMES("sometimes"),
    CONTINUOUS("all the time");

    private final String label;

    Running(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
