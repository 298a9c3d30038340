package oakum.portal.commissioning;

import oakum.physics.calculation.Labelled;

/** Where a design value comes from. */
public enum ValueSource implements Labelled {
    RECORD("from the house record"),
    PROOF("from a proof"),
    TYPED("typed on the sheet"),
    FIRM_RULE("firm rule, no published source");

    private final String label;

    ValueSource(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
