package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** Where the make-up air fan sits; decides at which temperature its volume flow counts. */
public enum FanPlace implements Labelled {
    BEFORE_HEATER("before the heater, in outdoor air"),
    AFTER_HEATER("after the heater, in delivered air");

    private final String label;

    FanPlace(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
