package oakum.physics.exposure;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.Iso13788Saturation;

/** What indoor air leaves at a cold plane as it leaks through a wall. */
public final class AirLeakageWetting {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "air-leakage-wetting", "1.0", "Wetting by leaking air", Input.class, Result.class)
            .purpose(
                    "Gives the moisture that indoor air leaves at a cold plane as the stack effect presses it through the"
                            + " small leaks of a wall or roof.")
            .equation("ΔP = ½ (ρ_e − ρ_i) g h, ρ = 353/T", AirLeak.SOURCE)
            .equation("q = k_CL · ΔP", AirLeak.SOURCE)
            .equation("m = q · max(0, v_i − v_sat(plane)), v = p/(R_v T)", AirLeak.SOURCE)
            .source(AirLeak.SOURCE)
            .caution(new Caution(
                    "Mould",
                    "A single hole at a service or a missing seal wets its surroundings far more than this mean does."
                            + " Look for it with smoke while the house is under pressure."))
            .validation("Computed a second time by independent code; method and coefficients from memory, no published"
                    + " example was found.")
            .by(AirLeakageWetting::compute);

    private static final double SECONDS_PER_DAY = 86_400;

    private AirLeakageWetting() {}

    /** The air on both sides, and the plane. */
    public record Input(
            @Entry(label = "Tightness of the envelope") AirLeak.Tightness tightness,

            @Quantity(
                    label = "Height of the connected air inside",
                    symbol = "h",
                    unit = Unit.METRE,
                    min = 0,
                    max = 100,
                    limitSource = InputRange.HOUSE,
                    help = "From the lowest floor to the place, where rooms are open to each other.")
            double airHeightM,

            @Quantity(
                    label = "Indoor temperature",
                    unit = Unit.CELSIUS,
                    min = -10,
                    max = 50,
                    limitSource = InputRange.INDOOR)
            double indoorTemperatureC,

            @Quantity(
                    label = "Indoor relative humidity",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE)
            double indoorHumidityFraction,

            @Quantity(
                    label = "Outdoor temperature",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 50,
                    limitSource = InputRange.WEATHER)
            double outdoorTemperatureC,

            @Quantity(
                    label = "Temperature of the plane",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 60,
                    limitSource = InputRange.WEATHER,
                    help = "The cold side of the insulation, where the air meets the sheathing.")
            double planeTemperatureC) {}

    /** What it leaves. */
    public record Result(
            @Quantity(label = "Pressure of the stack", symbol = "ΔP", unit = Unit.HOUSE_PASCAL, step = 0.01)
            double stackPa,

            @Quantity(label = "Leaking air", symbol = "q", unit = Unit.FLOW_PER_AREA, step = 1e-9)
            double airflowM3PerSM2,

            @Quantity(
                    label = "Vapour in the indoor air",
                    symbol = "v_i",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 1e-6)
            double indoorVapourKgPerM3,

            @Quantity(
                    label = "Vapour that air at the plane can hold",
                    symbol = "v_sat",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 1e-6)
            double planeVapourKgPerM3,

            @Quantity(
                    label = "Moisture left at the plane",
                    symbol = "m",
                    unit = Unit.GRAM_PER_SQUARE_METRE_DAY,
                    step = 0.01,
                    leading = true)
            double wettingGPerM2D,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        AirLeak leak = new AirLeak(input.tightness(), input.airHeightM());
        double flow = leak.airflowM3PerSM2(input.indoorTemperatureC(), input.outdoorTemperatureC());
        double indoorPa = input.indoorHumidityFraction() * Iso13788Saturation.pressurePa(input.indoorTemperatureC());
        double plane = input.planeTemperatureC();
        double wetting = AirLeak.wettingKgPerM2S(flow, input.indoorTemperatureC(), indoorPa, plane);
        List<Notice> notices = new ArrayList<>();
        if (wetting > 0 && plane < 0) {
            notices.add(Notice.note(
                    "frost",
                    "planeTemperatureC",
                    "The plane is below freezing: the moisture gathers as frost and comes as water when it thaws.",
                    AirLeak.SOURCE));
        }
        return new Result(
                leak.stackPa(input.indoorTemperatureC(), input.outdoorTemperatureC()),
                flow,
                Iso13788Saturation.vapourDensityKgPerM3(input.indoorTemperatureC(), indoorPa),
                Iso13788Saturation.vapourDensityKgPerM3(plane, Iso13788Saturation.pressurePa(plane)),
                1000 * SECONDS_PER_DAY * wetting,
                notices);
    }
}
