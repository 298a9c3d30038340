package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** What takes air out of the house. */
public enum DeviceKind implements Labelled {
    RANGE_HOOD("range hood"),
    DRYER("vented dryer"),
    BATH_FAN("bath fan"),
    VENTILATOR("ventilator that takes out more than it brings in, or its exhaust-only defrost"),
    OTHER("other exhaust");

    private final String label;

    DeviceKind(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
