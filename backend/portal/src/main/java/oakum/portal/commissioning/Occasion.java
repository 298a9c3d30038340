package oakum.portal.commissioning;

import oakum.physics.calculation.Labelled;

/** Whether something was measured before or after it was adjusted. */
public enum Occasion implements Labelled {
    AS_FOUND("as-found"),
    AS_LEFT("as-left");

    private final String label;

    Occasion(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
