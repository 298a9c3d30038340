package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** How the heater is supplied. */
public enum Phases implements Labelled {
    SINGLE("single phase", 1),
    THREE("three phases, voltage between phases", Math.sqrt(3));

    private final String label;
    private final double voltageFactor;

    Phases(String label, double voltageFactor) {
        this.label = label;
        this.voltageFactor = voltageFactor;
    }

    @Override
    public String label() {
        return label;
    }

    /** Current in A of a resistive power in W. */
    double currentA(double powerW, double voltageV) {
        return powerW / (voltageFactor * voltageV);
    }
}
