package oakum.physics.envelope;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.Iso13788Saturation;

/** Air that stays as it is on both sides. Relative humidity below 0 °C is counted over ice. */
public record SteadyClimate(
        @Quantity(
                label = "Indoor temperature",
                symbol = "θ_i",
                unit = Unit.CELSIUS,
                min = -40,
                max = 60,
                limitSource = InputRange.SATURATION)
        double indoorC,

        @Quantity(
                label = "Indoor relative humidity",
                symbol = "φ_i",
                unit = Unit.FRACTION,
                min = 0.01,
                max = 1,
                limitSource = "saturation")
        double indoorHumidityFraction,

        @Quantity(
                label = "Outdoor temperature",
                symbol = "θ_e",
                unit = Unit.CELSIUS,
                min = -40,
                max = 60,
                limitSource = InputRange.SATURATION)
        double outdoorC,

        @Quantity(
                label = "Outdoor relative humidity",
                symbol = "φ_e",
                unit = Unit.FRACTION,
                min = 0.01,
                max = 1,
                limitSource = "saturation",
                help = "Below 0 °C over ice.")
        double outdoorHumidityFraction) {
    double indoorPa() {
        return indoorHumidityFraction * Iso13788Saturation.pressurePa(indoorC);
    }

    double outdoorPa() {
        return outdoorHumidityFraction * Iso13788Saturation.pressurePa(outdoorC);
    }
}
