package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** Which cubic metre of make-up air is meant. */
public enum AirflowCount implements Labelled {
    STANDARD("standard air, 1.2041 kg/m³"),
    OUTDOOR("actual flow of the outdoor air, before the heater"),
    DELIVERED("actual flow of the delivered air, after the heater");

    private final String label;

    AirflowCount(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
