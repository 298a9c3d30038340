package oakum.physics.material;

import oakum.physics.calculation.Labelled;

/** What a material can be asked for; each carries its own source. */
public enum MaterialProperty implements Labelled {
    DENSITY("density"),
    HEAT_CAPACITY("heat capacity"),
    CONDUCTIVITY("conductivity"),
    CONDUCTIVITY_BY_TEMPERATURE("change of conductivity with temperature"),
    CONDUCTIVITY_BY_WATER("change of conductivity with water"),
    VAPOUR_RESISTANCE("vapour resistance"),
    SORPTION("sorption"),
    SATURATION_WATER("water at 100 % relative humidity"),
    WATER_UPTAKE("capillary water uptake"),
    AIR_PERMEANCE("air permeance"),
    MOULD_SENSITIVITY("mould sensitivity");

    private final String label;

    MaterialProperty(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
