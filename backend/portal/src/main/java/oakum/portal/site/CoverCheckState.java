package oakum.portal.site;

import oakum.physics.calculation.Labelled;

/** Where a cover check is; derived from its answers and signatures. */
public enum CoverCheckState implements Labelled {
    STOPPED("do not cover"),
    OPEN("not all looked at"),
    TO_SIGN("waits for a signature"),
    SIGNED("may be covered");

    private final String label;

    CoverCheckState(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
