package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.calculation.Violation;
import org.jspecify.annotations.Nullable;

/** Which filter size, how many, and what each costs in pressure, power and particles. */
public final class FilterSizing {
    static final Source FIRM = Source.proposed("firm rules");
    static final Source CURVE =
            Source.commonPractice("drag and inertia of a filter: only the inertia part scales with the air's density");
    private static final Source FAN_LAWS =
            Source.commonPractice("fan laws: at constant speed a fan's pressure is in proportion to the air's density");
    private static final Source FIELD = Source.seen(
            "Florida field study of 27 houses, FSEC-PF-321-97: 130 to 510 cfm per ton measured, mean 320; 350 to 450 is the"
                    + " target");
    private static final Source MASS_BALANCE =
            Source.commonPractice("mass balance of one well-mixed room, as in ASHRAE Fundamentals ch. 11");
    static final String HOUSE_FLOWS = "airflows of air handlers in houses";
    static final String HOUSE_PRESSURES = "air handlers in houses";
    static final String HOUSE_FILTERS = "filters of air handlers in houses";
    static final String NOT_NEGATIVE = "cannot be negative";
    static final String SHARE = "a share";

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "filter-sizing", "1.0", "Filter sizing", Input.class, Output.class)
            .purpose(
                    "Ranks candidate filters by what they cost in pressure, power and particles, and says why each fails or"
                            + " passes.")
            .equation("v = Q/(n·w·h); media velocity = Q/[n·(w/p)·2·√((p/2)² + d²)·h]", CURVE)
            .equation("Δp = a·v + b·(ρ/1.2)·v²", CURVE)
            .equation(
                    "static left for the filter = limit − other static;  loaded drop = K·Δp, at most the maker's final",
                    FIRM)
            .equation("fan: p_fan(Q)·ρ/1.2041 = S·(Q/Q_high)² + K·Δp(Q)", FAN_LAWS)
            .equation("air over the coil = Q·(ρ/1.2041)/cooling capacity", FIELD)
            .equation(
                    "C = [P·a_inf·C_out + (1 − η_v)·a_vent·C_out + E/V]/(a_inf + a_vent + k + η·Q_rec/V);"
                            + "  Q_rec = f·Q_high + (1 − f)·Q_low",
                    MASS_BALANCE)
            .equation("fan power = Q·(S·(Q/Q_high)² + Δp)/η_fan;  cost = power·8760 h·(1 − f)·price", FAN_LAWS)
            .source(FIRM)
            .source(CURVE)
            .source(FAN_LAWS)
            .source(FIELD)
            .source(MASS_BALANCE)
            .caution(new Caution(
                    "Refrigerant",
                    "Too little air over a cooling coil ices it up and can damage the compressor. Confirm the least airflow"
                            + " with the maker; work on the refrigerant circuit is for licensed technicians."))
            .caution(new Caution(
                    "Electrical",
                    "Fan power is a mean for choosing, not a circuit size. The circuit follows the nameplate and the local"
                            + " electrical code, and is for a licensed electrician."))
            .validation(
                    "Three invented houses and one fan table worked by independent code; areas, media velocities and fan"
                            + " operating points agree with it. No published example found.")
            .by(FilterSizing::compute);

    private FilterSizing() {}

    /** How the fan answers to resistance. */
    public enum FanKind implements Labelled {
        CONSTANT_FLOW("holds its airflow up to the static limit"),
        TABLE("no speed control, by its table"),
        CONSTANT_TORQUE("constant torque, a line through its table");

        private final String label;

        FanKind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** A filter that might do. */
    public record Candidate(
            @Entry(label = "Key", help = "Short and unique, such as 16x25x4.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Nominal width",
                    symbol = "w",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 3,
                    limitSource = HOUSE_FILTERS)
            double widthM,

            @Quantity(
                    label = "Nominal height",
                    symbol = "h",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 3,
                    limitSource = HOUSE_FILTERS)
            double heightM,

            @Quantity(
                    label = "Nominal depth",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 1,
                    limitSource = HOUSE_FILTERS)
            double depthM,

            @Quantity(
                    label = "Filters side by side",
                    symbol = "n",
                    unit = Unit.COUNT,
                    min = 1,
                    max = 12,
                    limitSource = HOUSE_FILTERS)
            int filterCount,

            @Quantity(
                    label = "Actual width",
                    unit = Unit.SMALL_METRE,
                    min = 0.03,
                    max = 3,
                    limitSource = HOUSE_FILTERS,
                    help = "Left out: 12.7 mm (half an inch) below nominal.")
            @Nullable
            Double actualWidthM,

            @Quantity(
                    label = "Actual height",
                    unit = Unit.SMALL_METRE,
                    min = 0.03,
                    max = 3,
                    limitSource = HOUSE_FILTERS,
                    help = "Left out: 12.7 mm (half an inch) below nominal.")
            @Nullable
            Double actualHeightM,

            @Quantity(
                    label = "Pleat depth",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0.001,
                    max = 1,
                    limitSource = HOUSE_FILTERS,
                    help = "With the pitch gives the media velocity.")
            @Nullable
            Double pleatDepthM,

            @Quantity(
                    label = "Pleat pitch",
                    symbol = "p",
                    unit = Unit.SMALL_METRE,
                    min = 0.001,
                    max = 0.2,
                    limitSource = HOUSE_FILTERS)
            @Nullable
            Double pleatPitchM,

            @Quantity(
                    label = "Clean curve, drag part",
                    symbol = "a",
                    unit = Unit.PASCAL_PER_VELOCITY,
                    min = 0,
                    max = 1000,
                    limitSource = HOUSE_FILTERS,
                    help = "Over nominal face velocity. Give both parts, or rated points below.")
            @Nullable
            Double linearPaSPerM,

            @Quantity(
                    label = "Clean curve, inertia part",
                    symbol = "b",
                    unit = Unit.PASCAL_PER_VELOCITY_SQUARED,
                    min = 0,
                    max = 1000,
                    limitSource = HOUSE_FILTERS,
                    help = "At 1.2 kg/m³.")
            @Nullable
            Double squarePaS2PerM2,

            @Quantity(
                    label = "Maker's final resistance",
                    unit = Unit.PASCAL,
                    min = 1,
                    max = 2500,
                    limitSource = HOUSE_FILTERS,
                    help = "The filter is never left beyond it.")
            @Nullable
            Double finalResistancePa,

            @Quantity(
                    label = "Grade (MERV)",
                    unit = Unit.ONE,
                    min = 1,
                    max = 16,
                    limitSource = "ASHRAE 52.2 table 12-1")
            int merv,

            @Entry(label = "Edition of the grade") Merv.Edition mervEdition,

            @Quantity(
                    label = "Efficiency for PM2.5",
                    symbol = "η",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "A grade gives it only roughly.")
            double particleFraction) {}

    /** One point of a candidate's rated curve, for one filter at standard air. */
    public record RatedPoint(
            @Entry(label = "Candidate", help = "Its key.", maxLength = 40)
            String candidate,

            @Quantity(
                    label = "Airflow",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 10,
                    limitSource = HOUSE_FLOWS)
            double flowM3PerS,

            @Quantity(
                    label = "Clean drop",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES)
            double dropPa) {}

    /** One point of the fan's table, at standard air. */
    public record FanPoint(
            @Quantity(
                    label = "Airflow",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 10,
                    limitSource = HOUSE_FLOWS)
            double flowM3PerS,

            @Quantity(label = "External static", unit = Unit.PASCAL, min = 0, max = 2500, limitSource = HOUSE_PRESSURES)
            double pressurePa) {}

    /** The house, for its fine particles. */
    public record House(
            @Quantity(
                    label = "PM2.5 outdoors",
                    symbol = "C_out",
                    unit = Unit.MICROGRAM_PER_CUBIC_METRE,
                    min = 0,
                    max = 2000,
                    limitSource = "the thickest wildfire smoke lies below 2000 µg/m³, common practice")
            double outdoorUgPerM3,

            @Quantity(
                    label = "Air volume of the house",
                    symbol = "V",
                    unit = Unit.CUBIC_METRE,
                    min = 10,
                    max = 20_000,
                    limitSource = "houses")
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
                    advisedSource = ParticleBalance.PENETRATION_RANGE)
            double penetrationFraction,

            @Quantity(
                    label = "Ventilation",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 5,
                    limitSource = NOT_NEGATIVE,
                    help = "Outdoor air that the ventilation supplies.")
            double ventilationM3PerS,

            @Quantity(
                    label = "Efficiency of the ventilation's filter",
                    symbol = "η_v",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "For PM2.5.")
            double ventilationFilterFraction,

            @Quantity(
                    label = "Settling rate",
                    symbol = "k",
                    unit = Unit.PER_HOUR,
                    min = 0.01,
                    max = 10,
                    limitSource = "particles always settle",
                    advisedMin = 0.1,
                    advisedMax = 1,
                    advisedSource = ParticleBalance.DEPOSITION_RANGE,
                    help = "0.39 per hour is usual.")
            double depositionPerH,

            @Quantity(
                    label = "Particles made indoors",
                    symbol = "E",
                    unit = Unit.MICROGRAM_PER_HOUR,
                    min = 0,
                    max = 1e9,
                    limitSource = NOT_NEGATIVE)
            double emissionUgPerH) {}

    /** The firm's limits, editable. */
    public record Rules(
            @Quantity(
                    label = "Greatest face velocity",
                    unit = Unit.METRE_PER_SECOND,
                    min = 0.1,
                    max = 5,
                    limitSource = HOUSE_FILTERS,
                    help = "1.0 m/s by the firm's rules; 1.5 m/s (300 fpm) is common at filter grilles.")
            double faceLimitMPerS,

            @Quantity(
                    label = "Greatest clean drop at high airflow",
                    unit = Unit.PASCAL,
                    min = 1,
                    max = 500,
                    limitSource = HOUSE_FILTERS,
                    help = "25 Pa by the firm's rules.")
            double cleanLimitPa,

            @Quantity(
                    label = "Filter load at the change",
                    symbol = "K",
                    unit = Unit.ONE,
                    min = 1,
                    max = 10,
                    limitSource = "a load of 1 is a new filter",
                    help = "2.0 by the firm's rules.")
            double changeLoad,

            @Quantity(
                    label = "Uncertainty of the rated curve",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 0.5,
                    limitSource = "beyond a half a curve tells nothing",
                    help = "A limit inside it is not proven; 0 takes the curve as exact.")
            double curveToleranceFraction,

            @Quantity(
                    label = "Air over the coil, advised least",
                    unit = Unit.FLOW_PER_POWER,
                    min = 0,
                    max = 2e-4,
                    limitSource = NOT_NEGATIVE,
                    help = "350 cfm per ton, standard air.")
            double coilAdvisedM3PerSW,

            @Quantity(
                    label = "Air over the coil, alarm below",
                    unit = Unit.FLOW_PER_POWER,
                    min = 0,
                    max = 2e-4,
                    limitSource = NOT_NEGATIVE,
                    help = "300 cfm per ton, standard air.")
            double coilAlarmM3PerSW) {

        private static final double CFM_PER_TON = 0.3048 * 0.3048 * 0.3048 / 60 / (12000 * 1055.05585262 / 3600);

        /** The limits with which the firm begins. */
        public static final Rules USUAL = new Rules(1.0, 25, 2.0, 0, 350 * CFM_PER_TON, 300 * CFM_PER_TON);
    }

    /** What is asked of the filter. */
    public record Input(
            @Quantity(
                    label = "Airflow, high",
                    symbol = "Q_high",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0.005,
                    max = 10,
                    limitSource = HOUSE_FLOWS)
            double highM3PerS,

            @Quantity(
                    label = "Airflow, continuous low",
                    symbol = "Q_low",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 10,
                    limitSource = HOUSE_FLOWS,
                    help = "0 where the fan rests between calls.")
            double lowM3PerS,

            @Quantity(
                    label = "Share of time at high",
                    symbol = "f",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = SHARE,
                    help = "Mean over the year; the rest runs at the low airflow.")
            double highShareFraction,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = "inhabited places")
            double altitudeM,

            @Quantity(
                    label = "Air temperature at the filter",
                    unit = Unit.CELSIUS,
                    min = -20,
                    max = 60,
                    limitSource = "return air of houses")
            double airC,

            @Entry(label = "Fan") FanKind fanKind,

            @Quantity(
                    label = "Greatest external static of the air handler",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES,
                    help = "At the high airflow, as the maker gives it for this altitude.")
            double staticLimitPa,

            @Quantity(
                    label = "Other external static at high airflow",
                    symbol = "S",
                    unit = Unit.PASCAL,
                    min = 0,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES,
                    help = "Ducts, grilles, coil and accessories not inside the rating, at this altitude.")
            double otherStaticPa,

            @Quantity(
                    label = "Fan efficiency",
                    symbol = "η_fan",
                    unit = Unit.FRACTION,
                    min = 0.01,
                    max = 1,
                    limitSource = "electrical power to external air power",
                    help = "Counted against external static: 10 to 40 % in houses.")
            double fanFraction,

            @Entry(
                    label = "Fan table",
                    help = "At standard air, in rising airflow. Not needed for a fan that holds its airflow.",
                    maxRows = 50)
            List<FanPoint> fanTable,

            @Quantity(
                    label = "Cooling capacity",
                    unit = Unit.WATT,
                    min = 100,
                    max = 200_000,
                    limitSource = "air handlers in houses",
                    help = "At this altitude; left out, the air over the coil is not looked at.")
            @Nullable
            Double coolingW,

            @Quantity(
                    label = "Price of electricity",
                    unit = Unit.MONEY_PER_KILOWATT_HOUR,
                    min = 0,
                    max = 100,
                    limitSource = NOT_NEGATIVE)
            double electricityCostPerKWh,

            @Entry(label = "House and its particles") House house,
            @Entry(label = "Rules of the firm") Rules rules,

            @Entry(label = "Candidates", minRows = 1, maxRows = 50)
            List<Candidate> candidates,

            @Entry(
                    label = "Rated points",
                    help = "For candidates without curve parts: one filter at standard air, two points or more.",
                    maxRows = 500)
            List<RatedPoint> ratedPoints) {}

    /** Whether enough air passes the coil once the filter is loaded. */
    public enum CoilAir implements Labelled {
        NOT_ASKED("no cooling capacity given"),
        ENOUGH("enough air"),
        BELOW_ADVISED("below the advised least"),
        BELOW_ALARM("below the alarm");

        private final String label;

        CoilAir(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** What one candidate does. */
    public record Option(
            @Entry(label = "Key") String id,

            @Entry(label = "Result") Verdict verdict,
            @Entry(label = "Reason") String reason,

            @Quantity(
                    label = "Face velocity",
                    symbol = "v",
                    unit = Unit.METRE_PER_SECOND,
                    step = 0.01,
                    limitField = "rules.faceLimitMPerS")
            double faceMPerS,

            @Quantity(label = "Face velocity, actual size", unit = Unit.METRE_PER_SECOND, step = 0.01)
            double actualFaceMPerS,

            @Quantity(label = "Media velocity", unit = Unit.METRE_PER_SECOND, step = 0.001) @Nullable
            Double mediaMPerS,

            @Quantity(
                    label = "Clean drop, high",
                    symbol = "Δp",
                    unit = Unit.PASCAL,
                    step = 0.1,
                    limitField = "rules.cleanLimitPa")
            double cleanHighPa,

            @Quantity(label = "Clean drop, low", unit = Unit.PASCAL, step = 0.1)
            double cleanLowPa,

            @Quantity(label = "Static left, clean", unit = Unit.PASCAL, step = 0.1)
            double staticLeftPa,

            @Quantity(label = "Drop at the change", unit = Unit.PASCAL, step = 0.1, limitField = "staticBudgetPa")
            double loadedPa,

            @Quantity(label = "Filter load at the change", unit = Unit.ONE, step = 0.01)
            double changeAtLoad,

            @Quantity(label = "Static budget used up at filter load", unit = Unit.ONE, step = 0.01)
            double usedUpLoad,

            @Quantity(label = "Airflow with clean filter", unit = Unit.CUBIC_METRE_PER_SECOND, step = 0.001) @Nullable
            Double cleanFlowM3PerS,

            @Quantity(label = "External static with clean filter", unit = Unit.PASCAL, step = 0.1) @Nullable
            Double cleanStaticPa,

            @Quantity(label = "Airflow with loaded filter", unit = Unit.CUBIC_METRE_PER_SECOND, step = 0.001) @Nullable
            Double loadedFlowM3PerS,

            @Quantity(label = "External static with loaded filter", unit = Unit.PASCAL, step = 0.1) @Nullable
            Double loadedStaticPa,

            @Quantity(label = "Air over the coil, loaded", unit = Unit.FLOW_PER_POWER, step = 1e-7) @Nullable
            Double coilM3PerSW,

            @Entry(label = "Air over the coil") CoilAir coilAir,

            @Quantity(label = "PM2.5 indoors", symbol = "C", unit = Unit.MICROGRAM_PER_CUBIC_METRE, step = 0.1)
            double indoorUgPerM3,

            @Quantity(label = "PM2.5 indoors without the low speed", unit = Unit.MICROGRAM_PER_CUBIC_METRE, step = 0.1)
            double withoutLowUgPerM3,

            @Quantity(label = "Fan power, high", unit = Unit.ELECTRIC_WATT, step = 1)
            double fanHighW,

            @Quantity(label = "Fan power, low", unit = Unit.ELECTRIC_WATT, step = 1)
            double fanLowW,

            @Quantity(label = "Electricity of the low speed in a year", unit = Unit.KILOWATT_HOUR, step = 1)
            double lowYearKWh,

            @Quantity(label = "Cost of the low speed in a year", unit = Unit.MONEY, step = 0.01)
            double lowYearCost) {}

    /** The candidates, best first. */
    public record Output(
            @Entry(label = "Best that passes") @Nullable String best,

            @Quantity(label = "Candidates that pass", unit = Unit.COUNT, step = 1, leading = true)
            int passingCount,

            @Quantity(label = "Static left for the filter", unit = Unit.PASCAL, step = 0.1, leading = true)
            double staticBudgetPa,

            @Quantity(label = "Air density", symbol = "ρ", unit = Unit.KILOGRAM_PER_CUBIC_METRE, step = 0.001)
            double airDensityKgPerM3,

            @Quantity(
                    label = "Best: face velocity",
                    unit = Unit.METRE_PER_SECOND,
                    step = 0.01,
                    leading = true,
                    limitField = "rules.faceLimitMPerS")
            @Nullable
            Double bestFaceMPerS,

            @Quantity(
                    label = "Best: clean drop, high",
                    unit = Unit.PASCAL,
                    step = 0.1,
                    leading = true,
                    limitField = "rules.cleanLimitPa")
            @Nullable
            Double bestCleanHighPa,

            @Entry(label = "Candidates, best first") List<Option> options,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        require(in);
        SizedFilter.Site site = SizedFilter.Site.of(in);
        List<Notice> notices = new ArrayList<>();
        Double coil = site.coilAirflow(in.highM3PerS());
        if (coil != null && coil < in.rules().coilAlarmM3PerSW()) {
            notices.add(Notice.advice(
                    "design-airflow-low",
                    "highM3PerS",
                    "The high airflow itself is below the coil's alarm at this altitude: no filter mends that.",
                    FIELD));
        }
        List<Option> options = new ArrayList<>();
        for (int i = 0; i < in.candidates().size(); i++) {
            options.add(SizedFilter.of(site, i, notices));
        }
        options.sort(SizedFilter.BEST_FIRST);
        Option best = options.get(0).verdict() == Verdict.PASSES ? options.get(0) : null;
        if (best == null) {
            notices.add(Notice.advice(
                    "none-passes",
                    "options",
                    "No candidate passes: more face area, a second filter or less other static is needed.",
                    FIRM));
        }
        return new Output(
                best == null ? null : best.id(),
                (int) options.stream()
                        .filter(option -> option.verdict() == Verdict.PASSES)
                        .count(),
                site.budgetPa(),
                site.density(),
                best == null ? null : best.faceMPerS(),
                best == null ? null : best.cleanHighPa(),
                List.copyOf(options),
                List.copyOf(notices));
    }

    private static void require(Input in) {
        if (in.lowM3PerS() > in.highM3PerS()) {
            throw refused("lowM3PerS", in.lowM3PerS(), "The low airflow is above the high one.");
        }
        if (in.otherStaticPa() >= in.staticLimitPa()) {
            throw refused(
                    "otherStaticPa",
                    in.otherStaticPa(),
                    "Nothing of the static of " + in.staticLimitPa() + " Pa is left for the filter.");
        }
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < in.candidates().size(); i++) {
            if (!ids.add(in.candidates().get(i).id())) {
                throw refused(
                        "candidates[" + i + "].id", in.candidates().get(i).id(), "Two candidates have the same key.");
            }
        }
        for (int i = 0; i < in.ratedPoints().size(); i++) {
            String of = in.ratedPoints().get(i).candidate();
            if (!ids.contains(of)) {
                throw refused("ratedPoints[" + i + "].candidate", of, "No candidate has the key \"" + of + "\".");
            }
        }
    }

    static Refused refused(String field, Object value, String sentence) {
        return new Refused(Violation.of(field, value, sentence, ""));
    }
}
