package oakum.physics.mould;

import oakum.physics.calculation.Labelled;

/** What the moisture of wood over time says, from good to bad. */
public enum WoodMoistureState implements Labelled {
    SAFE("safe: never above 20 %"),
    WATCH("watch: above 20 % for at most 30 days above freezing"),
    WARNED("warned: above 20 % for more than 30 days above freezing"),
    DECAY_CAN_START("decay can start: at fibre saturation between 5 and 40 °C");

    private final String label;

    WoodMoistureState(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
