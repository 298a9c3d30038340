package oakum.physics.housepressure;

import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;

/** The power that warms make-up air, which depends on what a cubic metre of it weighs. */
public final class MakeUpHeater {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "make-up-heater", "1.0", "Heater for make-up air", Input.class, Result.class)
            .purpose("Gives the power that warms make-up air from outdoor to delivered temperature at the house's"
                    + " altitude.")
            .equation("P = ρ Q cp (Tsup − Tout), with ρ of the air in which Q was counted", Citations.HEAT)
            .equation("ρ = (1 + W)/v at the altitude's pressure", Citations.AIR)
            .equation("I = P/U (single phase) or P/(√3 U) (three phases)", Citations.HEAT)
            .source(Citations.HEAT)
            .source(Citations.AIR)
            .caution(Cautions.ELECTRICAL)
            .validation("No published example was found; computed a second time by independent code, and against the"
                    + " rule of 1.08 Btu/h per cfm and °F of standard air (0.4 % lower).")
            .by(MakeUpHeater::compute);

    private MakeUpHeater() {}

    /** What the heater has to do. */
    public record Input(
            @Quantity(
                    label = "Make-up air",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 5,
                    limitSource = InputRange.PLAUSIBLE)
            double airflowM3PerS,

            @Entry(
                    label = "Flow counts as",
                    help = "In deep cold an actual cubic metre of outdoor air weighs a sixth more than standard air.")
            AirflowCount count,

            @Quantity(
                    label = "Altitude",
                    symbol = "z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = InputRange.PLAUSIBLE)
            double altitudeM,

            @Quantity(
                    label = "Outdoors",
                    symbol = "Tout",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 45,
                    limitSource = InputRange.PLAUSIBLE)
            double outdoorTemperatureC,

            @Quantity(
                    label = "Outdoor relative humidity",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "relative humidity lies between 0 and 1",
                    help = "Over ice below freezing; changes the density by less than 1 %.")
            double outdoorHumidityFraction,

            @Quantity(
                    label = "Delivered temperature",
                    symbol = "Tsup",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 60,
                    limitSource = InputRange.PLAUSIBLE)
            double supplyTemperatureC,

            @Quantity(
                    label = "Voltage",
                    symbol = "U",
                    unit = Unit.VOLT,
                    min = 24,
                    max = 690,
                    limitSource = InputRange.PLAUSIBLE)
            double voltageV,

            @Entry(label = "Supply") Phases phases) {}

    /** Its power. */
    public record Result(
            @Quantity(
                    label = "Heater power",
                    symbol = "P",
                    unit = Unit.WATT,
                    step = 10,
                    leading = true,
                    help = "0 where the outdoor air is warm enough.")
            double heaterPowerW,

            @Quantity(label = "Current", symbol = "I", unit = Unit.AMPERE, step = 0.1, leading = true)
            double currentA,

            @Quantity(label = "Mass flow", symbol = "ṁ", unit = Unit.KILOGRAM_PER_SECOND, step = 1e-4)
            double massFlowKgPerS,

            @Quantity(
                    label = "Density in which the flow counts",
                    symbol = "ρ",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 1e-4)
            double densityKgPerM3,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double pressure = StandardAtmosphere.pressurePa(input.altitudeM());
        double humidity =
                MoistAir.humidityRatio(input.outdoorTemperatureC(), input.outdoorHumidityFraction(), pressure);
        double density = switch (input.count()) {
            case STANDARD -> Air.STANDARD_KG_PER_M3;
            case OUTDOOR -> MoistAir.densityKgPerM3(input.outdoorTemperatureC(), humidity, pressure);
            case DELIVERED -> MoistAir.densityKgPerM3(input.supplyTemperatureC(), humidity, pressure);
        };
        double massFlow = density * input.airflowM3PerS();
        double power =
                Math.max(0, MakeUpHeat.powerW(massFlow, input.outdoorTemperatureC(), input.supplyTemperatureC()));
        return new Result(
                power,
                input.phases().currentA(power, input.voltageV()),
                massFlow,
                density,
                input.supplyTemperatureC() < PressureNotices.COOLEST_DELIVERED_C
                        ? List.of(PressureNotices.deliveredCold(
                                "supplyTemperatureC", "The make-up air", input.supplyTemperatureC()))
                        : List.of());
    }
}
