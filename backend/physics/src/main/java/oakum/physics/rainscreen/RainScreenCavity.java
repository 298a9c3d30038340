package oakum.physics.rainscreen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;

/** Airflow, air change and drying power of a cavity, month by month. */
public final class RainScreenCavity {
    private static final double FILM_W_PER_M2_K = 17;
    private static final double GERMAN_OPENING_M2_PER_M = 5000e-6;
    private static final double GERMAN_DEPTH_M = 0.020;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "rain-screen-cavity", "1.0", "Rain-screen cavity: air and drying", Input.class, Result.class)
            .purpose("Gives the air change of the cavity behind a cladding from stack, wind and sun, what it can dry in"
                    + " each month, and the class of its openings.")
            .equation("Δp = 353 (1/Te − 1/Tc) g h + ΔCp ½ ρ U²", Citations.DRIVE)
            .equation("Δp = 12 μ h Q/(γ d³) + ½ ρ (Q/(Cd Ab))² + ½ ρ (Q/(Cd At))²", Citations.FLOW)
            .equation("turbulent: Δp = 0.3164 Re^−0.25 h/(2 d) ½ ρ v², the larger loss counts", Citations.TURBULENT)
            .equation("θsol = θe + α I/17", Citations.SOL_AIR)
            .equation(
                    "θ(z) = θ∞ + (θe − θ∞) exp(−z/Λ), θ∞ = (Uo θsol + Ui θi)/(Uo + Ui), Λ = ρ cp Q/(Uo + Ui)",
                    Citations.SUN)
            .equation("drying ≤ Q (vsat(θc) − ve)/h, vapour in kg/m³", Citations.DRYING)
            .equation("Weq = n d/(3600 Rv Tc)", Citations.PERMEANCE)
            .source(Citations.FLOW)
            .source(Citations.MEASURED)
            .source(Citations.ISO_6946)
            .source(Citations.GERMAN)
            .source(Citations.MESH)
            .caution(Cautions.MOULD)
            .caution(Cautions.FIRE)
            .validation("No published example was found; computed a second time by independent code. Measured cavities"
                    + " of siding on battens show 100 to 1000 air changes an hour.")
            .by(RainScreenCavity::compute);

    private RainScreenCavity() {}

    /** What covers the cavity. */
    public enum Cladding implements Labelled {
        BOARDS("boards, shingles or panels on battens", 100, 1000),
        BRICK("brick veneer", 1, 10);

        private final String label;
        private final double leastMeasuredPerH;
        private final double mostMeasuredPerH;

        Cladding(String label, double leastMeasuredPerH, double mostMeasuredPerH) {
            this.label = label;
            this.leastMeasuredPerH = leastMeasuredPerH;
            this.mostMeasuredPerH = mostMeasuredPerH;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return String.format(
                    Locale.ROOT, "measured %.0f to %.0f air changes an hour", leastMeasuredPerH, mostMeasuredPerH);
        }
    }

    /** A month's mean weather on this wall. */
    public record Month(
            @Quantity(
                    label = "Outdoor temperature",
                    symbol = "θe",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 50,
                    limitSource = Citations.PLAUSIBLE)
            double outdoorC,

            @Quantity(
                    label = "Outdoor relative humidity",
                    symbol = "φe",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "a relative humidity")
            double outdoorHumidityFraction,

            @Quantity(
                    label = "Wind at the wall",
                    symbol = "U",
                    unit = Unit.WIND_METRE_PER_SECOND,
                    min = 0,
                    max = 40,
                    limitSource = Citations.PLAUSIBLE)
            double windMPerS,

            @Quantity(
                    label = "Sun on the wall, mean of day and night",
                    symbol = "I",
                    unit = Unit.WATT_PER_SQUARE_METRE,
                    min = 0,
                    max = 1200,
                    limitSource = Citations.PLAUSIBLE)
            double sunWPerM2) {}

    /** A cavity, its cladding and a year. */
    public record Input(
            @Entry(label = "Cladding") Cladding cladding,

            @Entry(label = "Cavity") Cavity cavity,

            @Quantity(
                    label = "Share of the sun that the cladding takes up",
                    symbol = "α",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "a share",
                    help = "Dark wood 0.7 to 0.85, light 0.3 to 0.4.")
            double absorbedFraction,

            @Quantity(
                    label = "From the cavity air through the cladding to sun and air",
                    symbol = "Uo",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 0.1,
                    max = 25,
                    limitSource = Citations.PLAUSIBLE,
                    help = "About 4 for wood boards.")
            double outerWPerM2K,

            @Quantity(
                    label = "From the cavity air through the wall to the house",
                    symbol = "Ui",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 0,
                    max = 5,
                    limitSource = Citations.PLAUSIBLE,
                    help = "About the U-value of the wall.")
            double innerWPerM2K,

            @Quantity(
                    label = "Indoor temperature",
                    symbol = "θi",
                    unit = Unit.CELSIUS,
                    min = 5,
                    max = 35,
                    limitSource = Citations.PLAUSIBLE)
            double indoorC,

            @Quantity(
                    label = "Difference of wind coefficients, bottom less top",
                    symbol = "ΔCp",
                    unit = Unit.ONE,
                    min = -1,
                    max = 1,
                    limitSource = Citations.PLAUSIBLE,
                    advisedMin = -0.2,
                    advisedMax = 0.2,
                    advisedSource = "0.05 to 0.2 within one wall face (from memory)",
                    help = "Negative where the wind pushes the air down.")
            double windCoefficientDifference,

            @Quantity(
                    label = "Altitude",
                    symbol = "z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = Citations.PLAUSIBLE)
            double altitudeM,

            @Entry(label = "Humidity below 0 °C counts") BelowFreezing belowFreezing,

            @Entry(label = "Months", minRows = 1, maxRows = 12)
            List<Month> months) {}

    /** What the cavity does in a month. */
    public record MonthResult(
            @Quantity(label = "Air change", symbol = "n", unit = Unit.PER_HOUR, step = 0.1)
            double airChangePerH,

            @Quantity(
                    label = "Airflow for each metre of wall",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-6)
            double airflowM3PerS,

            @Quantity(label = "Velocity", symbol = "v", unit = Unit.METRE_PER_SECOND, step = 0.001)
            double velocityMPerS,

            @Quantity(label = "Reynolds number", symbol = "Re", unit = Unit.ONE, step = 1)
            double reynolds,

            @Quantity(label = "Pressure that drives it", symbol = "Δp", unit = Unit.PASCAL, step = 0.001)
            double drivePa,

            @Entry(label = "Air rises") boolean upward,

            @Quantity(label = "Cavity air, mean", symbol = "θc", unit = Unit.CELSIUS, step = 0.1)
            double cavityC,

            @Quantity(label = "Cavity air where it leaves", unit = Unit.CELSIUS, step = 0.1)
            double exitC,

            @Quantity(
                    label = "Drying at most",
                    unit = Unit.WATER_PER_DAY,
                    step = 0.0001,
                    help = "From a surface that stays wet; a wall that dries from within gives less.")
            double dryingKgPerM2D,

            @Quantity(
                    label = "Worth, as a permeance beside the cladding's own",
                    symbol = "Weq",
                    unit = Unit.VAPOUR_PERMEANCE,
                    step = 1e-12)
            double permeanceKgPerSM2Pa) {}

    /** What comes of it. */
    public record Result(
            @Quantity(label = "Least air change of all months", unit = Unit.PER_HOUR, step = 0.1, leading = true)
            double leastAirChangePerH,

            @Quantity(label = "Greatest air change of all months", unit = Unit.PER_HOUR, step = 0.1)
            double greatestAirChangePerH,

            @Quantity(label = "Least drying of all months", unit = Unit.WATER_PER_DAY, step = 0.0001, leading = true)
            double leastDryingKgPerM2D,

            @Quantity(label = "Free bottom opening", unit = Unit.SQUARE_METRE_PER_METRE, step = 1e-6)
            double bottomFreeM2PerM,

            @Quantity(label = "Free top opening", unit = Unit.SQUARE_METRE_PER_METRE, step = 1e-6)
            double topFreeM2PerM,

            @Entry(label = "Class by the smaller opening") CavityVentilation ventilation,

            @Entry(label = "Openings of a well-ventilated layer, 1500 mm²/m")
            Verdict openings,

            @Entry(label = "Months") List<MonthResult> months,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        List<MonthResult> months =
                input.months().stream().map(month -> month(input, month)).toList();
        Cavity cavity = input.cavity();
        double least =
                months.stream().mapToDouble(MonthResult::airChangePerH).min().orElse(0);
        double greatest =
                months.stream().mapToDouble(MonthResult::airChangePerH).max().orElse(0);
        return new Result(
                least,
                greatest,
                months.stream().mapToDouble(MonthResult::dryingKgPerM2D).min().orElse(0),
                cavity.bottomFreeM2PerM(),
                cavity.topFreeM2PerM(),
                CavityVentilation.of(cavity.leastFreeM2PerM()),
                cavity.leastFreeM2PerM() >= CavityVentilation.WELL_FROM_M2_PER_M ? Verdict.PASSES : Verdict.FAILS,
                months,
                notices(input, least, greatest));
    }

    private static MonthResult month(Input input, Month month) {
        Cavity cavity = input.cavity();
        double pressureFraction = StandardAtmosphere.pressurePa(input.altitudeM()) / MoistAir.STANDARD_PRESSURE_PA;
        double outdoorC = month.outdoorC();
        CavityClimate climate = new CavityClimate(
                outdoorC,
                outdoorC + input.absorbedFraction() * month.sunWPerM2() / FILM_W_PER_M2_K,
                input.indoorC(),
                input.outerWPerM2K(),
                input.innerWPerM2K(),
                CavityFlow.windPa(
                        input.windCoefficientDifference(),
                        pressureFraction * CavityFlow.densityKgPerM3(outdoorC),
                        month.windMPerS()),
                pressureFraction);
        CavityAir air = CavityAir.balance(cavity, climate);
        double airChange = cavity.airChangePerH(air.flow().airflowM3PerSM());
        double outdoorPa =
                month.outdoorHumidityFraction() * Iso13788Saturation.pressurePa(outdoorC, input.belowFreezing());
        return new MonthResult(
                airChange,
                air.flow().airflowM3PerSM(),
                air.flow().velocityMPerS(),
                air.flow().reynolds(),
                air.drivePa(),
                air.upward(),
                air.meanC(),
                air.exitC(),
                CavityDrying.limitKgPerM2D(
                        cavity,
                        air.flow().airflowM3PerSM(),
                        air.meanC(),
                        Iso13788Saturation.vapourDensityKgPerM3(outdoorC, outdoorPa)),
                CavityDrying.permeanceKgPerSM2Pa(airChange, cavity.depthM(), air.meanC()));
    }

    private static List<Notice> notices(Input input, double least, double greatest) {
        List<Notice> said = new ArrayList<>(Limits.advice(input));
        Cavity cavity = input.cavity();
        if (cavity.leastFreeM2PerM() <= 0) {
            said.add(Notice.advice(
                    "cavity-shut",
                    cavity.bottomFreeM2PerM() <= 0 ? "cavity.bottomGrossM2PerM" : "cavity.topGrossM2PerM",
                    "One end of the cavity is shut: no air passes through, and water that comes in stays.",
                    Citations.ISO_6946));
        } else if (cavity.leastFreeM2PerM() < GERMAN_OPENING_M2_PER_M || cavity.depthM() < GERMAN_DEPTH_M) {
            said.add(Notice.note(
                    "openings-below-5000",
                    "ventilation",
                    String.format(
                            Locale.ROOT,
                            "The smaller opening has %.0f mm²/m free and the cavity %.0f mm; German practice asks for"
                                    + " 5000 mm²/m and 20 mm.",
                            1e6 * cavity.leastFreeM2PerM(),
                            1000 * cavity.depthM()),
                    Citations.GERMAN));
        }
        Cladding cladding = input.cladding();
        if (greatest > cladding.mostMeasuredPerH || least < cladding.leastMeasuredPerH) {
            said.add(Notice.advice(
                    "air-change-unlike-measured",
                    "leastAirChangePerH",
                    String.format(
                            Locale.ROOT,
                            "Computed %.0f to %.0f air changes an hour; cavities of this kind were measured at %.0f to"
                                    + " %.0f. Use the lower of the two.",
                            least,
                            greatest,
                            cladding.leastMeasuredPerH,
                            cladding.mostMeasuredPerH),
                    Citations.MEASURED));
        }
        said.add(Notice.note(
                "means-hide-hours",
                "months",
                "Mean wind and sun move more air than still nights and less than sunny noons; once a wall dries from"
                        + " within, the cavity hardly matters.",
                Citations.MEASURED));
        return List.copyOf(said);
    }
}
