package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** What the monthly method finds (ISO 13788 clause 6.5). */
public enum CondensationVerdict implements Labelled {
    NONE("no condensation in any month"),
    DRIES("condenses, and dries out within the year"),
    DOES_NOT_DRY("does not dry out within the year");

    private final String label;

    CondensationVerdict(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
