package oakum.physics.wood;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** How dry the wood is: by the air it lies in or by its own moisture, never both. */
public record WoodCondition(
        @Quantity(
                label = "Relative humidity of the air",
                symbol = "RH",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a relative humidity",
                advisedMin = 0.05,
                advisedMax = 0.95,
                advisedSource = "USDA Wood Handbook table 4-2 runs from 5 to 95 %",
                help = "The wood is taken to have come to rest in it.")
        @Nullable
        Double relativeHumidityFraction,

        @Quantity(
                label = "Moisture of the wood",
                symbol = "M",
                unit = Unit.FRACTION,
                min = 0,
                max = 0.3,
                limitSource = "wood neither swells nor shrinks above fibre saturation, about 30 %",
                help = "As a meter reads it. Meters are unsure below 7 %.")
        @Nullable
        Double moistureFraction) {

    /**
     * Moisture of the wood.
     *
     * @param field where this condition stands in the input
     * @throws Refused where both or neither are given
     */
    double moistureFraction(String field, double temperatureC) {
        Double humidity = relativeHumidityFraction;
        Double moisture = moistureFraction;
        if (humidity != null && moisture == null) {
            return WoodMoisture.equilibriumFraction(temperatureC, humidity);
        }
        if (moisture != null && humidity == null) {
            return moisture;
        }
        throw Refused.of(
                field + ".moistureFraction",
                moisture == null ? "" : moisture.toString(),
                "Give either the relative humidity of the air or the moisture of the wood for " + field
                        + (moisture == null ? "; neither is given." : ", not both."),
                Citations.EQUILIBRIUM);
    }
}
