package oakum.physics.material;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import oakum.physics.calculation.Labelled;

/** What a material can be asked for; each carries its own source. */
public enum MaterialProperty implements Labelled {
    DENSITY("density", "densityKgPerM3"),
    HEAT_CAPACITY("heat capacity", "heatCapacityJPerKgK"),
    CONDUCTIVITY("conductivity", "conductivityWPerMK", "conductivityWaterFraction"),
    CONDUCTIVITY_BY_TEMPERATURE("change of conductivity with temperature", "conductivityByTemperaturePerK"),
    CONDUCTIVITY_BY_WATER("change of conductivity with water", "moistureSupplement", "moistureCoefficient"),
    VAPOUR_RESISTANCE("vapour resistance", "resistanceFactors", "diffusionThicknesses"),
    SORPTION("sorption", "sorption", "waterAt80PercentKgPerM3"),
    SATURATION_WATER("water at 100 % relative humidity", "saturationWaterKgPerM3"),
    WATER_UPTAKE("capillary water uptake", "waterUptakeKgPerM2SqrtS", "liquidRule"),
    AIR_PERMEANCE("air permeance", "airPermeanceM3PerSM2"),
    MOULD_SENSITIVITY("mould sensitivity", "mouldSensitivity");

    private final String label;
    private final List<String> components;

    MaterialProperty(String label, String... components) {
        this.label = label;
        this.components = List.of(components);
    }

    @Override
    public String label() {
        return label;
    }

    /** The components of {@link MaterialInput} that say it. */
    public List<String> components() {
        return components;
    }

    /** What a component of {@link MaterialInput} tells of; empty for its names and its source. */
    static Optional<MaterialProperty> of(String component) {
        return Arrays.stream(values())
                .filter(property -> property.components.contains(component))
                .findFirst();
    }
}
