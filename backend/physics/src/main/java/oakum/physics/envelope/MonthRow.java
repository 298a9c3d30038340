package oakum.physics.envelope;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** A month's mean climate. Relative humidity below 0 °C is counted over ice, as ISO 13788 does. */
public record MonthRow(
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
                help = "Below 0 °C over ice; of a weather service, which counts over water, it must be turned first.")
        double outdoorHumidityFraction,

        @Quantity(
                label = "Indoor temperature",
                symbol = "θ_i",
                unit = Unit.CELSIUS,
                min = -40,
                max = 60,
                limitSource = InputRange.SATURATION,
                help = "Left out: 20 °C, or that of the continental climate.")
        @Nullable
        Double indoorC,

        @Quantity(
                label = "Indoor relative humidity",
                symbol = "φ_i",
                unit = Unit.FRACTION,
                min = 0.01,
                max = 1,
                limitSource = "saturation",
                help = "Where it is typed month by month.")
        @Nullable
        Double indoorHumidityFraction) {
    private static final double USUAL_INDOOR_C = 20;

    double outdoorVapourPa() {
        return outdoorHumidityFraction * Iso13788Saturation.pressurePa(outdoorC);
    }

    double indoorTemperatureC(IndoorHumidity humidity) {
        if (indoorC != null) {
            return indoorC;
        }
        return humidity.isContinental()
                ? USUAL_INDOOR_C + 5 * Math.min(1, Math.max(0, (outdoorC - 10) / 10))
                : USUAL_INDOOR_C;
    }

    /**
     * @param field pointer to the row
     * @throws Refused where the humidity is to be typed and is not, or would be above saturation
     */
    double indoorVapourPa(IndoorHumidity humidity, String field) {
        double saturation = Iso13788Saturation.pressurePa(indoorTemperatureC(humidity));
        if (humidity == IndoorHumidity.OWN) {
            if (indoorHumidityFraction == null) {
                throw Refused.of(
                        field + ".indoorHumidityFraction",
                        "",
                        "The indoor relative humidity (" + field
                                + ".indoorHumidityFraction) is missing; it is to be typed" + " month by month.",
                        Citations.MONTHLY);
            }
            return indoorHumidityFraction * saturation;
        }
        double pressure = humidity.isContinental()
                ? humidity.continentalFraction(outdoorC) * saturation
                : outdoorVapourPa() + humidity.excessPa(outdoorC);
        if (pressure > saturation) {
            throw Refused.of(
                    field,
                    Double.toString(pressure / saturation),
                    "In " + field + " the humidity class would bring the indoor air above saturation, at "
                            + Math.round(100 * pressure / saturation) + " % relative humidity; take another class or"
                            + " another indoor temperature.",
                    Citations.CLASSES);
        }
        return pressure;
    }
}
