package oakum.physics.airtightness;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.airtightness.InfiltrationModels.Flow;
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
import oakum.physics.moistair.PlacePressure;
import org.jspecify.annotations.Nullable;

/**
 * What leaks in by wind and stack at one moment's weather, by several models side by side: a range and not one number,
 * for the models differ more than their decimals say. The flow at 50 Pa divided by a fixed number is not offered: what
 * leaks in depends on climate, height and shelter.
 */
public final class InfiltrationEstimate {
    private static final Source HANDBOOK =
            Source.fromMemory("ASHRAE Fundamentals ch. 16, Ventilation and Infiltration, residential models");
    private static final Source AIM2 =
            Source.fromMemory("Walker and Wilson 1998, Field validation of algebraic equations"
                    + " for stack and wind driven air infiltration calculations");
    private static final Source LBL =
            Source.fromMemory("Sherman and Grimsrud 1980, Infiltration-pressurization correlation");
    private static final Source STANDARD_62_2 =
            Source.seen("ASHRAE 62.2 section 4.1.2, as a model code's appendix E 605.1.3 quotes it");
    private static final Source NORMALISED = Source.fromMemory("ASHRAE 62.2, normalised leakage");
    private static final Source SHORT_FORM =
            Source.seen("national weatherisation work specifications, infiltration credit after ASHRAE 62.2");

    static final String HOUSE_LIMIT = "wider than any house; common practice, no published source";
    static final String WEATHER_LIMIT = "extremes of weather on earth";

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "infiltration", "1.0", "Infiltration estimate", Input.class, Output.class)
            .purpose(
                    "Gives the range of what wind and stack drive through the leaks of a house in one moment's weather.")
            .equation("C = Q50/50^n; ELA4 = C·4^(n − 0.5)·√(ρ0/2)", TightnessTest.E779)
            .equation("basic: Q = (ELA4/1000)·√(Cs·Δt + Cw·U²), L/s and cm²", HANDBOOK)
            .equation("enhanced: Qs = C·Cs·Δt^n, Qw = C·Cw·(s·G·U)^(2n), Q = √(Qs² + Qw²)", HANDBOOK)
            .equation(
                    "stack and wind with power law: Qs = C·fs·(ρo·g·H·Δt/Ti)^n, Qw = C·fw·(ρo·(Sw·U)²/2)^n,"
                            + " Q = (Qs^(1/n) + Qw^(1/n) − (Qs·Qw)^(1/2n)/3)^n",
                    AIM2)
            .equation(
                    "fs = (1 + n·R)/(n + 1)·(1/2 − M^(5/4)/2)^(n + 1), M = X²/(2 − R);"
                            + " fw = 0.19·(2 − n)·(1 − ((X + R)/2)^1.5)",
                    AIM2)
            .equation("leakage area: Q = ELA4·√(fs²·Δt + fw²·U²)", LBL)
            .equation("fs = (1 + R/2)/3·(1 − X²/(2 − R)²)^1.5·√(g·H/295);" + " fw = C'·(1 − R)^(1/3)·α·(H/10)^γ", LBL)
            .equation("year: NL = 1000·(ELA4/A)·(H/2.5)^0.4", NORMALISED)
            .equation("year: Q = NL·wsf·A/1.44, L/s", STANDARD_62_2)
            .equation("year, short form: Q = 0.052·Q50·wsf·(H/2.5)^0.4", SHORT_FORM)
            .source(HANDBOOK)
            .source(AIM2)
            .source(LBL)
            .source(STANDARD_62_2)
            .caution(new Caution(
                    "Air to breathe",
                    "Infiltration is no ventilation: it fails on mild still days, when nothing drives it. A tight house"
                            + " needs its ventilation running."))
            .validation(
                    "Own code for every model (coefficients from memory), a handbook-style example of the basic model,"
                            + " and the storey factors of a published page. No worked example of the other models was found.")
            .by(InfiltrationEstimate::compute);

    private InfiltrationEstimate() {}

    /** Storeys above ground. */
    public enum Storeys implements Labelled {
        ONE(1, "one"),
        TWO(2, "two"),
        THREE(3, "three");

        private final int number;
        private final String label;

        Storeys(int number, String label) {
            this.number = number;
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }

        int count() {
            return number;
        }
    }

    /** How much stands around the house. */
    public enum Shelter implements Labelled {
        NONE(1, "nothing around, open country"),
        LIGHT(2, "a few trees or sheds"),
        MODERATE(3, "other houses across a street, trees"),
        HEAVY(4, "houses and trees close by, typical suburb"),
        VERY_HEAVY(5, "close-built town or dense wood");

        private final int number;
        private final String label;

        Shelter(int number, String label) {
            this.number = number;
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return HANDBOOK.printed();
        }

        int shelterClass() {
            return number;
        }
    }

    /** Roughness of the land around, for the wind at the house. */
    public enum Terrain implements Labelled {
        WATER(1, "open water or desert"),
        OPEN(2, "open land with scattered obstacles"),
        RURAL(3, "country with low buildings and trees"),
        SUBURB(4, "suburb, small town or wood"),
        CITY(5, "centre of a large city");

        private final int number;
        private final String label;

        Terrain(int number, String label) {
            this.number = number;
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return LBL.printed();
        }

        int terrainClass() {
            return number;
        }
    }

    /** What the house stands on. */
    public enum Foundation implements Labelled {
        BASEMENT_OR_SLAB("basement or slab"),
        CRAWL_SPACE("crawl space");

        private final String label;

        Foundation(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** One of the models. */
    public enum Model implements Labelled {
        BASIC("handbook, basic", HANDBOOK),
        ENHANCED("handbook, enhanced", HANDBOOK),
        POWER_LAW("stack and wind with power law", AIM2),
        LEAKAGE_AREA("leakage area, stack and wind", LBL);

        private final String label;
        private final Source source;

        Model(String label, Source source) {
            this.label = label;
            this.source = source;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return source.printed();
        }
    }

    /** A house and the weather at its place. */
    public record Input(
            @Quantity(
                    label = "Flow at 50 Pa",
                    symbol = "Q50",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 25,
                    limitSource = HOUSE_LIMIT,
                    help = "From a tightness test, or the target.")
            double airflow50M3PerS,

            @Quantity(
                    label = "Exponent",
                    symbol = "n",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 1,
                    limitSource = "0.5 is an opening, 1 a fine crack: theory of flow through leaks",
                    help = "From the test; 0.65 where there is none yet.")
            double exponent,

            @Quantity(
                    label = "Volume",
                    symbol = "V",
                    unit = Unit.CUBIC_METRE,
                    min = 5,
                    max = 100_000,
                    limitSource = HOUSE_LIMIT)
            double volumeM3,

            @Quantity(
                    label = "Floor area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 5,
                    max = 30_000,
                    limitSource = HOUSE_LIMIT)
            double floorAreaM2,

            @Quantity(
                    label = "Height of the envelope",
                    symbol = "H",
                    unit = Unit.METRE,
                    min = 2,
                    max = 30,
                    limitSource = HOUSE_LIMIT,
                    help = "From the lowest floor above ground to the highest ceiling.")
            double heightM,

            @Entry(label = "Storeys above ground") Storeys storeys,
            @Entry(label = "Foundation") Foundation foundation,
            @Entry(label = "Shelter") Shelter shelter,
            @Entry(label = "Land around") Terrain terrain,

            @Entry(
                    label = "A flue is open to the rooms",
                    help = "A fireplace, stove or appliance that vents by draught.")
            boolean openFlue,

            @Quantity(
                    label = "Leaks in ceiling and floor",
                    symbol = "R",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "definition",
                    help = "Share of all leaks; half is a usual guess where nothing is known.")
            double ceilingAndFloorFraction,

            @Quantity(
                    label = "Ceiling leaks less floor leaks",
                    symbol = "X",
                    unit = Unit.FRACTION,
                    min = -1,
                    max = 1,
                    limitSource = "definition",
                    help = "As a share of all leaks; 0 where both leak the same.")
            double ceilingLessFloorFraction,

            @Quantity(
                    label = "Indoor temperature",
                    symbol = "ti",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = WEATHER_LIMIT)
            double indoorTemperatureC,

            @Quantity(
                    label = "Outdoor temperature",
                    symbol = "te",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 60,
                    limitSource = WEATHER_LIMIT)
            double outdoorTemperatureC,

            @Quantity(
                    label = "Wind at the weather station",
                    symbol = "U",
                    unit = Unit.METRE_PER_SECOND,
                    min = 0,
                    max = 60,
                    limitSource = WEATHER_LIMIT)
            double windMPerS,

            @Quantity(
                    label = "Air pressure",
                    symbol = "p",
                    unit = Unit.AIR_PASCAL,
                    min = 45_000,
                    max = 110_000,
                    limitSource = WEATHER_LIMIT,
                    help = "Fill in this or the altitude.")
            @Nullable
            Double pressurePa,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = -430,
                    max = 5500,
                    limitSource = "lowest shore and highest settlements on earth")
            @Nullable
            Double altitudeM,

            @Quantity(
                    label = "Weather factor of the place",
                    symbol = "wsf",
                    unit = Unit.ONE,
                    min = 0.1,
                    max = 2,
                    limitSource = "ASHRAE 62.2 appendix B lists about 0.3 to 1.3, from memory",
                    help = "From ASHRAE 62.2 appendix B. Left out: no figure for the year.")
            @Nullable
            Double weatherFactor) {}

    /** What one model says. */
    public record Estimate(
            @Entry(label = "Model") Model model,

            @Quantity(label = "By stack alone", symbol = "Qs", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double stackAirflowM3PerS,

            @Quantity(label = "By wind alone", symbol = "Qw", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double windAirflowM3PerS,

            @Quantity(label = "Together", symbol = "Q", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double airflowM3PerS,

            @Quantity(label = "Air changes", unit = Unit.PER_HOUR, step = 0.001)
            double airChangePerH) {}

    /** The range over the models. */
    public record Output(
            @Quantity(
                    label = "At least",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-4,
                    leading = true,
                    help = "The lowest of the models at this weather.")
            double lowAirflowM3PerS,

            @Quantity(
                    label = "At most",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-4,
                    leading = true,
                    help = "The highest of the models at this weather.")
            double highAirflowM3PerS,

            @Quantity(label = "At least, air changes", unit = Unit.PER_HOUR, step = 0.01)
            double lowAirChangePerH,

            @Quantity(label = "At most, air changes", unit = Unit.PER_HOUR, step = 0.01)
            double highAirChangePerH,

            @Entry(label = "Models side by side") List<Estimate> estimates,

            @Quantity(label = "Leakage area at 4 Pa", symbol = "ELA4", unit = Unit.SMALL_SQUARE_METRE, step = 1e-5)
            double leakageArea4M2,

            @Quantity(label = "Normalised leakage", symbol = "NL", unit = Unit.ONE, step = 0.001)
            double normalisedLeakage,

            @Quantity(
                    label = "Over a year, after ASHRAE 62.2",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-4,
                    help = "For the ventilation credit only: an effective mean for indoor air, not for energy.")
            @Nullable
            Double yearAirflowM3PerS,

            @Quantity(
                    label = "The same by the short form",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-4,
                    help = "Takes an exponent of 0.65 whatever was measured.")
            @Nullable
            Double yearShortFormM3PerS,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        if (Math.abs(in.ceilingLessFloorFraction()) > in.ceilingAndFloorFraction()) {
            throw Refused.of(
                    "ceilingLessFloorFraction",
                    Double.toString(in.ceilingLessFloorFraction()),
                    "The difference of ceiling and floor leaks cannot exceed their sum.",
                    AIM2);
        }
        PowerLaw law = PowerLaw.ofAirflow50(in.airflow50M3PerS(), in.exponent());
        double area = law.effectiveLeakageAreaM2();
        List<Estimate> estimates = estimates(in, law, area);
        double low =
                estimates.stream().mapToDouble(Estimate::airflowM3PerS).min().orElseThrow();
        double high =
                estimates.stream().mapToDouble(Estimate::airflowM3PerS).max().orElseThrow();
        double leakage = InfiltrationModels.normalisedLeakage(area, in.floorAreaM2(), in.heightM());
        Double factor = in.weatherFactor();
        return new Output(
                low,
                high,
                3600 * low / in.volumeM3(),
                3600 * high / in.volumeM3(),
                estimates,
                area,
                leakage,
                factor == null ? null : InfiltrationModels.standardYearM3PerS(leakage, factor, in.floorAreaM2()),
                factor == null
                        ? null
                        : InfiltrationModels.standardYearShortM3PerS(
                                in.airflow50M3PerS(), factor, InfiltrationModels.storeyFactorOfHeight(in.heightM())),
                notices(in, low, high));
    }

    private static List<Estimate> estimates(Input in, PowerLaw law, double area) {
        double difference = Math.abs(in.indoorTemperatureC() - in.outdoorTemperatureC());
        double pressure = PlacePressure.pressurePa(in.pressurePa(), in.altitudeM());
        int storeys = in.storeys().count();
        int shelter = in.shelter().shelterClass();
        double r = in.ceilingAndFloorFraction();
        double x = in.ceilingLessFloorFraction();
        List<Estimate> estimates = new ArrayList<>();
        estimates.add(estimate(
                in, Model.BASIC, InfiltrationModels.basic(area, difference, in.windMPerS(), storeys, shelter)));
        estimates.add(estimate(
                in,
                Model.ENHANCED,
                InfiltrationModels.enhanced(
                        law,
                        difference,
                        in.windMPerS(),
                        storeys,
                        shelter,
                        in.foundation() == Foundation.CRAWL_SPACE,
                        in.openFlue())));
        if (!in.openFlue()) {
            estimates.add(estimate(
                    in,
                    Model.POWER_LAW,
                    InfiltrationModels.aim2(
                            law,
                            r,
                            x,
                            in.heightM(),
                            in.indoorTemperatureC(),
                            in.outdoorTemperatureC(),
                            pressure,
                            InfiltrationModels.windAtEavesMPerS(in.windMPerS(), storeys),
                            InfiltrationModels.shelterFactor(shelter))));
        }
        estimates.add(estimate(
                in,
                Model.LEAKAGE_AREA,
                InfiltrationModels.lbl(
                        area,
                        difference,
                        in.windMPerS(),
                        in.heightM(),
                        r,
                        x,
                        shelter,
                        in.terrain().terrainClass())));
        return List.copyOf(estimates);
    }

    private static Estimate estimate(Input in, Model model, Flow flow) {
        return new Estimate(
                model,
                flow.stackM3PerS(),
                flow.windM3PerS(),
                flow.airflowM3PerS(),
                3600 * flow.airflowM3PerS() / in.volumeM3());
    }

    private static List<Notice> notices(Input in, double low, double high) {
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.note(
                "a-range",
                "highAirflowM3PerS",
                String.format(
                        Locale.ROOT,
                        "At this weather %.3f to %.3f air changes an hour. Take the range, not its middle: where the leaks"
                                + " are and how the wind stands matter more than the choice of model.",
                        3600 * low / in.volumeM3(),
                        3600 * high / in.volumeM3()),
                Source.proposed("reading of several models side by side")));
        if (in.openFlue()) {
            notices.add(Notice.advice(
                    "open-flue",
                    "openFlue",
                    "A flue open to the rooms leaks much of the time and may spill combustion gas when fans run. One model"
                            + " is left out because its flue terms could not be verified.",
                    AIM2));
        }
        if (in.weatherFactor() == null) {
            notices.add(Notice.note(
                    "no-year",
                    "weatherFactor",
                    "Without the place's weather factor there is no figure for the year.",
                    STANDARD_62_2));
        }
        return List.copyOf(notices);
    }
}
