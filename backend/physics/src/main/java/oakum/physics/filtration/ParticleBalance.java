package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;
import org.jspecify.annotations.Nullable;

/** Fine particles indoors: what a house settles at and how fast smoke clears. */
public final class ParticleBalance {
    private static final Source MASS_BALANCE =
            Source.commonPractice("mass balance of one well-mixed room, as in ASHRAE Fundamentals ch. 11");
    private static final Source ASHRAE_241 = Source.fromMemory(
            "ASHRAE Standard 241-2023: equivalent clean air; a dwelling's target of 15 L/s for each person"
                    + " must be checked against its table 5-1 before use");
    static final String NOT_NEGATIVE = "cannot be negative";
    static final String SHARE = "a share of the particles";
    static final String DEPOSITION_RANGE = "usual settling rates of PM2.5 in houses, 0.1 to 1 per hour, from memory";
    static final String PENETRATION_RANGE =
            "usual penetration, 0.7 to 1.0 and in tight envelopes 0.6 to 0.8, from memory";
    private static final double HOURS_A_YEAR = 8760;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "particle-balance", "1.0", "Fine particles", Input.class, Output.class)
            .purpose("Gives the fine particles a house settles at and how fast smoke clears through its filter.")
            .equation("L = a_inf + a_vent + k + η·Q_rec/V", MASS_BALANCE)
            .equation("C = [P·a_inf·C_out + (1 − η_s)·a_vent·C_out + E/V]/L", MASS_BALANCE)
            .equation("C(t) = C + (C0 − C)·exp(−L·t)", MASS_BALANCE)
            .equation("clean air of the filter = η·Q_rec", MASS_BALANCE)
            .equation("equivalent clean air = Q_outdoor + η_PR·Q_rec;  needed = people × target", ASHRAE_241)
            .source(MASS_BALANCE)
            .source(ASHRAE_241)
            .caution(new Caution(
                    "Health",
                    "The efficiency of a filter for PM2.5 depends on the sizes in the air, so the result is approximate."
                            + " Smoke that irritates is a matter for the public health authority's advice, carbon monoxide"
                            + " for an alarm: no particle filter takes gases out."))
            .validation(
                    "Four states and one clearing after smoke computed by independent code; no published example found.")
            .by(ParticleBalance::compute);

    private ParticleBalance() {}

    /** The house, its air and its filter. */
    public record Input(
            @Quantity(
                    label = "PM2.5 outdoors",
                    symbol = "C_out",
                    unit = Unit.MICROGRAM_PER_CUBIC_METRE,
                    min = 0,
                    max = 2000,
                    limitSource = "the thickest wildfire smoke lies below 2000 µg/m³, common practice",
                    help = "Mean of the season, or of a smoke episode.")
            double outdoorUgPerM3,

            @Quantity(
                    label = "Air volume of the house",
                    symbol = "V",
                    unit = Unit.CUBIC_METRE,
                    min = 1,
                    max = 100_000,
                    limitSource = "from one room to a large building",
                    help = "Net volume of air.")
            double volumeM3,

            @Quantity(
                    label = "Air changes through cracks",
                    symbol = "a_inf",
                    unit = Unit.PER_HOUR,
                    min = 0,
                    max = 20,
                    limitSource = NOT_NEGATIVE,
                    help = "At the weather of the season, not at 50 Pa.")
            double infiltrationPerH,

            @Quantity(
                    label = "Penetration of the envelope",
                    symbol = "P",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    advisedMin = 0.6,
                    advisedSource = PENETRATION_RANGE,
                    help = "Share of the particles that survive the cracks: 0.7 to 1.0, tight envelopes 0.6 to 0.8.")
            double penetrationFraction,

            @Quantity(
                    label = "Air changes of the ventilation",
                    symbol = "a_vent",
                    unit = Unit.PER_HOUR,
                    min = 0,
                    max = 20,
                    limitSource = NOT_NEGATIVE,
                    help = "Outdoor air that the ventilation supplies.")
            double ventilationPerH,

            @Quantity(
                    label = "Efficiency of the supply filter",
                    symbol = "η_s",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "For PM2.5, of the filter in the ventilation's outdoor air.")
            double supplyFilterFraction,

            @Quantity(
                    label = "Settling rate",
                    symbol = "k",
                    unit = Unit.PER_HOUR,
                    min = 0,
                    max = 10,
                    limitSource = NOT_NEGATIVE,
                    advisedMin = 0.1,
                    advisedMax = 1,
                    advisedSource = DEPOSITION_RANGE,
                    help = "0.39 per hour is usual in a furnished house.")
            double depositionPerH,

            @Quantity(
                    label = "Airflow through the recirculating filter",
                    symbol = "Q_rec",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 50,
                    limitSource = NOT_NEGATIVE,
                    help = "Mean over the day: airflow times its share of running time.")
            double recirculatedM3PerS,

            @Quantity(
                    label = "Efficiency of the recirculating filter",
                    symbol = "η",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "For PM2.5; a filter's grade gives it only roughly.")
            double filterFraction,

            @Quantity(
                    label = "Particles made indoors",
                    symbol = "E",
                    unit = Unit.MICROGRAM_PER_HOUR,
                    min = 0,
                    max = 1e9,
                    limitSource = NOT_NEGATIVE,
                    help = "Cooking, candles, living; 0 to see outdoor particles alone.")
            double emissionUgPerH,

            @Quantity(
                    label = "Concentration at the start",
                    symbol = "C0",
                    unit = Unit.MICROGRAM_PER_CUBIC_METRE,
                    min = 0,
                    max = 1e5,
                    limitSource = NOT_NEGATIVE,
                    help = "After a smoke event; give it together with the time, or leave both out.")
            @Nullable
            Double startUgPerM3,

            @Quantity(
                    label = "Time since then",
                    symbol = "t",
                    unit = Unit.HOUR,
                    min = 0,
                    max = 1000,
                    limitSource = NOT_NEGATIVE)
            @Nullable
            Double afterH,

            @Quantity(
                    label = "People at home",
                    unit = Unit.COUNT,
                    min = 1,
                    max = 1000,
                    limitSource = "at least one person",
                    help = "To compare clean air with a target against infection; leave out to skip.")
            @Nullable
            Integer peopleCount,

            @Quantity(
                    label = "Efficiency for infectious aerosol",
                    symbol = "η_PR",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "Of the recirculating filter; 77 % for MERV 13, from memory. Needed with the people.")
            @Nullable
            Double aerosolFraction,

            @Quantity(
                    label = "Clean air wanted for each person",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = NOT_NEGATIVE,
                    help = "15 L/s (54 m³/h) in a dwelling, from memory: check the standard. Needed with the people.")
            @Nullable
            Double cleanAirPerPersonM3PerS) {}

    /** What the house settles at. */
    public record Output(
            @Quantity(
                    label = "PM2.5 indoors, settled",
                    symbol = "C",
                    unit = Unit.MICROGRAM_PER_CUBIC_METRE,
                    step = 0.1,
                    leading = true)
            double steadyUgPerM3,

            @Quantity(label = "Sum of losses", symbol = "L", unit = Unit.PER_HOUR, step = 0.01)
            double lossPerH,

            @Quantity(label = "Time until half has gone", unit = Unit.HOUR, step = 0.01)
            double halvingH,

            @Quantity(label = "Without the recirculating filter", unit = Unit.MICROGRAM_PER_CUBIC_METRE, step = 0.1)
            @Nullable
            Double withoutFilterUgPerM3,

            @Quantity(
                    label = "Concentration after that time",
                    symbol = "C(t)",
                    unit = Unit.MICROGRAM_PER_CUBIC_METRE,
                    step = 0.1)
            @Nullable
            Double afterUgPerM3,

            @Quantity(label = "Clean air of the filter", unit = Unit.CUBIC_METRE_PER_SECOND, step = 0.0001)
            double filterCleanAirM3PerS,

            @Quantity(label = "Dust caught in a year", unit = Unit.GRAM, step = 0.1)
            double caughtInYearG,

            @Quantity(label = "Equivalent clean air", unit = Unit.CUBIC_METRE_PER_SECOND, step = 0.0001) @Nullable
            Double equivalentCleanAirM3PerS,

            @Quantity(label = "Equivalent clean air needed", unit = Unit.CUBIC_METRE_PER_SECOND, step = 0.0001)
            @Nullable
            Double neededCleanAirM3PerS,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        RoomParticles room = room(in, in.recirculatedM3PerS());
        if (!(room.lossPerH() > 0)) {
            throw new Refused(Violation.of(
                    "depositionPerH",
                    in.depositionPerH(),
                    "Without any air change, settling or filter the particles never settle at a value.",
                    MASS_BALANCE.printed()));
        }
        RoomParticles without = room(in, 0);
        Double start = in.startUgPerM3();
        Double after = in.afterH();
        if ((start == null) != (after == null)) {
            throw new Refused(Violation.of(
                    start == null ? "startUgPerM3" : "afterH",
                    "",
                    "Concentration at the start and time since then go together: give both or none.",
                    ""));
        }
        Integer people = in.peopleCount();
        Double aerosol = in.aerosolFraction();
        Double target = in.cleanAirPerPersonM3PerS();
        if (people != null && (aerosol == null || target == null)) {
            throw new Refused(Violation.of(
                    aerosol == null ? "aerosolFraction" : "cleanAirPerPersonM3PerS",
                    "",
                    "With people at home, both the efficiency for infectious aerosol and the clean air wanted for each"
                            + " person are needed.",
                    ASHRAE_241.printed()));
        }
        List<Notice> notices = new ArrayList<>();
        if (without.lossPerH() == 0) {
            notices.add(Notice.note(
                    "filter-alone",
                    "withoutFilterUgPerM3",
                    "The filter is the only loss: without it the particles would not settle at any value.",
                    MASS_BALANCE));
        }
        double steady = room.steadyUgPerM3();
        return new Output(
                steady,
                room.lossPerH(),
                Math.log(2) / room.lossPerH(),
                without.lossPerH() == 0 ? null : without.steadyUgPerM3(),
                start == null || after == null ? null : room.afterUgPerM3(start, after),
                room.filterCleanAirM3PerS(),
                FilterFace.caughtG(steady, in.filterFraction(), in.recirculatedM3PerS(), HOURS_A_YEAR),
                people == null || aerosol == null
                        ? null
                        : RoomParticles.equivalentCleanAirM3PerS(
                                in.ventilationPerH() * in.volumeM3() / 3600, in.recirculatedM3PerS(), aerosol),
                people == null || target == null ? null : people * target,
                List.copyOf(notices));
    }

    private static RoomParticles room(Input in, double recirculatedM3PerS) {
        return new RoomParticles(
                in.outdoorUgPerM3(),
                in.volumeM3(),
                in.infiltrationPerH(),
                in.penetrationFraction(),
                in.ventilationPerH(),
                in.supplyFilterFraction(),
                in.depositionPerH(),
                recirculatedM3PerS,
                in.filterFraction(),
                in.emissionUgPerH());
    }
}
