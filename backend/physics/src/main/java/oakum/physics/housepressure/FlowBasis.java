package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** At which density an entered volume flow counts; decides how much air a cubic metre or a cubic foot is. */
public enum FlowBasis implements Labelled {
    STANDARD("standard air, 1.2041 kg/m³ (20 °C at sea level)"),
    LOCAL("air of this place: one density, the altitude's pressure at a stated temperature"),
    OWN_STATE("each flow at its own temperature, at this altitude");

    private final String label;

    FlowBasis(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
