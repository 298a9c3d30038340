package oakum.physics.exposure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.Iso13788Saturation;

/** The indoor air that a wall is judged against, by every method side by side, at one outdoor mean. */
public final class IndoorClimateClass {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "indoor-climate-class", "1.0", "Indoor humidity by class", Input.class, Result.class)
            .purpose("Gives the indoor humidity that a wall is judged against when nothing was measured, by the methods"
                    + " of three standards side by side.")
            .equation("ISO 13788: p_i = p_e + Δp, Δp at 0 °C and below by class, none from 20 °C", HumidityClass.SOURCE)
            .equation(
                    "EN 15026: φ_i 30 % up to −10 °C to 60 % from 20 °C (high load 40 to 70 %); t_i 20 °C up to 10 °C to"
                            + " 25 °C from 20 °C",
                    IndoorClimate.Continental.SOURCE)
            .equation("ASHRAE 160 simplified: φ_i = 40 % + (t_e + 10) %, 40 to 70 %", AshraeIndoor.SOURCE)
            .equation("ASHRAE 160 intermediate: p_i = p_e + 1.36e5 · m/(n V)", AshraeIndoor.SOURCE)
            .equation(
                    "t_i = 21.1 °C up to 18.3 °C outside, above it t_e + 2.8 K; cooled at most 23.9 °C",
                    AshraeIndoor.SOURCE)
            .source(HumidityClass.SOURCE)
            .source(AshraeIndoor.SOURCE)
            .caution(new Caution(
                    "Mould",
                    "A class is a convention, not this household. Measure where people already live in the house."))
            .validation(
                    "Computed a second time by independent code from the printed equations; no worked example of the"
                            + " standards was found.")
            .by(IndoorClimateClass::compute);

    private static final double SECONDS_PER_HOUR = 3600;

    private IndoorClimateClass() {}

    /** The air outside, and the house. */
    public record Input(
            @Quantity(
                    label = "Outdoor temperature, mean of a day or month",
                    symbol = "t_e",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 50,
                    limitSource = InputRange.WEATHER)
            double outdoorTemperatureC,

            @Quantity(
                    label = "Outdoor relative humidity",
                    symbol = "φ_e",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE)
            double outdoorHumidityFraction,

            @Entry(label = "Humidity below freezing is counted")
            BelowFreezing belowFreezing,

            @Quantity(
                    label = "Indoor temperature for the humidity class",
                    symbol = "t_i",
                    unit = Unit.CELSIUS,
                    min = -10,
                    max = 40,
                    limitSource = InputRange.INDOOR)
            double indoorTemperatureC,

            @Entry(label = "Humidity class") HumidityClass humidityClass,

            @Quantity(
                    label = "Volume",
                    symbol = "V",
                    unit = Unit.CUBIC_METRE,
                    min = 20,
                    max = 100_000,
                    limitSource = InputRange.HOUSE)
            double volumeM3,

            @Quantity(
                    label = "Air change",
                    symbol = "n",
                    unit = Unit.PER_HOUR,
                    min = 0.01,
                    max = 20,
                    limitSource = InputRange.HOUSE,
                    help = "The ventilation as it runs; 0.2 for a standard and 0.1 for an airtight house where it is"
                            + " unknown.")
            double airChangePerH,

            @Quantity(label = "Bedrooms", unit = Unit.COUNT, min = 1, max = 50, limitSource = InputRange.HOUSE)
            int bedroomCount,

            @Entry(label = "Cooled in summer") boolean cooled) {}

    /** The air inside by every method. */
    public record Result(
            @Quantity(label = "Vapour pressure outside", symbol = "p_e", unit = Unit.PASCAL, step = 0.1)
            double outdoorVapourPa,

            @Quantity(label = "Vapour pressure inside, ISO 13788", unit = Unit.PASCAL, step = 0.1, leading = true)
            double isoVapourPa,

            @Quantity(label = "Humidity inside, ISO 13788", unit = Unit.FRACTION, step = 0.001, leading = true)
            double isoHumidityFraction,

            @Quantity(label = "Temperature inside, EN 15026", unit = Unit.CELSIUS, step = 0.1)
            double continentalTemperatureC,

            @Quantity(label = "Humidity inside, EN 15026, normal load", unit = Unit.FRACTION, step = 0.001)
            double continentalNormalFraction,

            @Quantity(label = "Humidity inside, EN 15026, high load", unit = Unit.FRACTION, step = 0.001)
            double continentalHighFraction,

            @Quantity(label = "Temperature inside, ASHRAE 160", unit = Unit.CELSIUS, step = 0.1)
            double ashraeTemperatureC,

            @Quantity(label = "Humidity inside, ASHRAE 160 simplified", unit = Unit.FRACTION, step = 0.001)
            double simplifiedFraction,

            @Quantity(label = "Vapour pressure inside, ASHRAE 160 intermediate", unit = Unit.PASCAL, step = 0.1)
            double intermediateVapourPa,

            @Quantity(
                    label = "Humidity inside, ASHRAE 160 intermediate",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    leading = true)
            double intermediateFraction,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double te = input.outdoorTemperatureC();
        double pe = input.outdoorHumidityFraction() * Iso13788Saturation.pressurePa(te, input.belowFreezing());
        IndoorClimate iso = new IndoorClimate.Classed(input.humidityClass(), input.indoorTemperatureC());
        IndoorClimate intermediate = new IndoorClimate.AshraeIntermediate(
                input.cooled(),
                AshraeIndoor.generationKgPerS(input.bedroomCount()),
                input.volumeM3() * input.airChangePerH() / SECONDS_PER_HOUR);

        List<Notice> notices = new ArrayList<>();
        double isoFraction = humidity(iso, te, pe);
        double intermediateFraction = humidity(intermediate, te, pe);
        if (intermediateFraction > AshraeIndoor.VENTILATION_MISSING) {
            notices.add(Notice.advice(
                    "ventilation-missing",
                    "airChangePerH",
                    String.format(
                            Locale.ROOT,
                            "Ventilation missing: %.2f air changes an hour do not carry off what %d bedrooms give off; the"
                                    + " air inside would stand at %.0f %% relative humidity. Enter the ventilation as it"
                                    + " will run.",
                            input.airChangePerH(),
                            input.bedroomCount(),
                            100 * Math.min(1, intermediateFraction)),
                    AshraeIndoor.SOURCE));
        }
        if (isoFraction > 1 || intermediateFraction > 1) {
            notices.add(Notice.advice(
                    "saturated-inside",
                    "",
                    "Where the humidity comes out at 100 % the method asks for more vapour than the air can hold.",
                    HumidityClass.SOURCE));
        }
        return new Result(
                pe,
                iso.vapourPressurePa(te, pe),
                Math.min(1, isoFraction),
                IndoorClimate.Continental.NORMAL.temperatureC(te),
                IndoorClimate.Continental.NORMAL.relativeHumidity(te),
                IndoorClimate.Continental.HIGH.relativeHumidity(te),
                AshraeIndoor.temperatureC(te, input.cooled()),
                AshraeIndoor.simplifiedHumidity(te),
                intermediate.vapourPressurePa(te, pe),
                Math.min(1, intermediateFraction),
                notices);
    }

    private static double humidity(IndoorClimate climate, double outdoorC, double outdoorPa) {
        return Iso13788Saturation.relativeHumidity(
                climate.temperatureC(outdoorC), climate.vapourPressurePa(outdoorC, outdoorPa));
    }
}
