package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** Who sets a limit. */
public enum LimitOrigin implements Labelled {
    FIRM_RULE("firm rule"),
    CODE("code"),
    APPLIANCE("appliance maker"),
    TEST_FORM("form of a test standard");

    private final String label;

    LimitOrigin(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
