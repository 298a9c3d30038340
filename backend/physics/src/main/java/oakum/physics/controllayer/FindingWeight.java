package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** How much a finding weighs. */
public enum FindingWeight implements Labelled {
    FAILS("fails"),
    NOT_PROVEN("not proven"),
    LOOK("worth a look");

    private final String label;

    FindingWeight(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
