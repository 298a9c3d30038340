package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** What a layer holds back, or does for the layers behind it. */
public enum Control implements Labelled {
    WATER("water"),
    AIR("air"),
    VAPOUR("vapour"),
    THERMAL("heat"),
    DRAIN("drains and dries"),
    RAIN("rain");

    private final String label;

    Control(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
