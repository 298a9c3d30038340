package oakum.physics.housepressure;

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
import oakum.physics.calculation.Verdict;
import oakum.physics.duct.DuctSurface;
import oakum.physics.duct.RoundDuct;
import oakum.physics.moistair.MoistAir;

/** What a dryer can push through its duct. */
public final class DryerDuct {
    private static final double CODE_MAKE_UP_M3_PER_S = 200 * PressureNotices.CFM;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "dryer-duct", "1.0", "Dryer duct: flow and pressure", Input.class, Result.class)
            .purpose("Gives the pressure that a dryer's claimed flow needs in its duct, and the flow that its pressure"
                    + " allows.")
            .equation("Δp = f (L/D) ρ V²/2", Citations.DUCTS)
            .equation("1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)) above Re 2300, f = 64/Re below", Citations.DUCTS)
            .source(Citations.DUCTS)
            .source(Citations.DRYER_AIR)
            .source(Citations.IRC_DRYER)
            .caution(Cautions.FIRE)
            .caution(Cautions.COMBUSTION)
            .caution(Cautions.GAS)
            .caution(Caution.CODE_AUTHORITY)
            .validation("No published example was found; computed a second time by independent code.")
            .by(DryerDuct::compute);

    private DryerDuct() {}

    /** A dryer and its duct. */
    public record Input(
            @Quantity(
                    label = "Flow said to be moved",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.PLAUSIBLE,
                    advisedMin = 100 * PressureNotices.CFM,
                    advisedMax = 225 * PressureNotices.CFM,
                    advisedSource = "135 cfm is the design value of Minn. R. 1346.0501; trade reports 100 to 250 cfm",
                    help = "135 cfm where nothing is known. A higher claim needs a measurement.")
            double airflowM3PerS,

            @Quantity(
                    label = "Duct diameter",
                    symbol = "D",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 0.5,
                    limitSource = InputRange.PLAUSIBLE)
            double diameterM,

            @Quantity(
                    label = "Length, with elbows counted in duct",
                    symbol = "L",
                    unit = Unit.METRE,
                    min = 0.1,
                    max = 100,
                    limitSource = InputRange.PLAUSIBLE,
                    help = "Code lists count an elbow of 90° in 4 in. duct as 1.5 m (5 ft), of 45° as 0.76 m (2 ft 6"
                            + " in.).")
            double equivalentLengthM,

            @Entry(label = "Duct surface") DuctSurface surface,

            @Quantity(
                    label = "Pressure of the dryer",
                    symbol = "pd",
                    unit = Unit.PASCAL,
                    min = 1,
                    max = 1000,
                    limitSource = InputRange.PLAUSIBLE,
                    help = "From its data sheet; about 150 Pa (0.6 in. w.c.) is usual.")
            double availablePa,

            @Quantity(
                    label = "Air temperature in the duct",
                    symbol = "T",
                    unit = Unit.CELSIUS,
                    min = 0,
                    max = 100,
                    limitSource = InputRange.PLAUSIBLE)
            double temperatureC,

            @Quantity(
                    label = "Altitude",
                    symbol = "z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = InputRange.PLAUSIBLE)
            double altitudeM) {}

    /** What comes of it. */
    public record Result(
            @Quantity(
                    label = "Pressure that the flow needs",
                    symbol = "Δp",
                    unit = Unit.PASCAL,
                    step = 0.1,
                    leading = true,
                    limitField = "availablePa")
            double dropPa,

            @Entry(label = "Against the dryer's pressure") Verdict verdict,

            @Quantity(
                    label = "Flow that the dryer's pressure allows",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-5,
                    leading = true)
            double possibleM3PerS,

            @Quantity(label = "Velocity", symbol = "V", unit = Unit.METRE_PER_SECOND, step = 0.01)
            double velocityMPerS,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        RoundDuct duct = new RoundDuct(
                input.diameterM(), input.equivalentLengthM(), input.surface().roughnessM(), 0);
        Air air = new Air(
                FlowBasis.LOCAL, input.altitudeM(), input.temperatureC(), input.temperatureC(), input.temperatureC());
        double density = air.countKgPerM3();
        double viscosity = MoistAir.viscosityPaS(input.temperatureC());
        double drop = duct.dropPa(input.airflowM3PerS(), density, viscosity);
        double possible = duct.airflowM3PerS(input.availablePa(), density, viscosity);
        return new Result(
                drop,
                Verdict.atMost(drop, 0, input.availablePa()),
                possible,
                duct.velocityMPerS(input.airflowM3PerS()),
                notices(input, drop, possible));
    }

    private static List<Notice> notices(Input input, double drop, double possible) {
        List<Notice> said = new ArrayList<>();
        if (drop > input.availablePa()) {
            said.add(Notice.advice(
                    "dryer-cannot-move-it",
                    "airflowM3PerS",
                    String.format(
                            Locale.ROOT,
                            "The flow needs %.0f Pa and the dryer has %.0f Pa: about %.0f m³/h (%.0f cfm) is possible."
                                    + " Measure it with a flow hood or a duct traverse.",
                            drop,
                            input.availablePa(),
                            possible * 3600,
                            possible / PressureNotices.CFM),
                    Citations.DUCTS));
        }
        if (input.airflowM3PerS() > CODE_MAKE_UP_M3_PER_S) {
            said.add(Notice.advice(
                    "dryer-above-200-cfm",
                    "airflowM3PerS",
                    "The model fuel gas and residential codes require make-up air for a dryer above 200 cfm (340 m³/h);"
                            + " ask what holds at this place.",
                    Citations.IRC_DRYER));
        }
        return List.copyOf(said);
    }
}
