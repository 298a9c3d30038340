package oakum.portal.aftercare;

import oakum.physics.calculation.Labelled;

/** The part of a day in which somebody comes; hours are a firm rule, no published source. */
public enum HalfDay implements Labelled {
    MORNING("in the morning, 8 to 12"),
    AFTERNOON("in the afternoon, 13 to 17");

    private final String label;

    HalfDay(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
