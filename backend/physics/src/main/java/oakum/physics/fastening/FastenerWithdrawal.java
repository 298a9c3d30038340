package oakum.physics.fastening;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** What a fastener holds against being pulled out, and what the wind asks of it. */
public final class FastenerWithdrawal {
    private static final double LAG_END_GRAIN = 0.75;
    private static final double TOE_NAILED = 0.67;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "fastener-withdrawal", "1.0", "Fastener: withdrawal", Input.class, Result.class)
            .purpose("Gives the allowable withdrawal of a nail or screw in wood and holds the wind on its share of the"
                    + " cladding against it.")
            .equation("plain nail: W = 1380 G^2.5 D lb/in.", Citations.PLAIN)
            .equation("ring-shank nail: W = 1800 G² D", Citations.RING)
            .equation("smooth stainless nail: W = 465 G^1.5 D", Citations.STAINLESS)
            .equation("wood screw: W = 2850 G² D", Citations.WOOD_SCREW)
            .equation("lag screw: W = 1800 G^1.5 D^0.75", Citations.LAG)
            .equation("W' = W p CD CM Ct Ceg Ctn, demand = suction · area", Citations.FACTORS)
            .source(Citations.PLAIN)
            .source(Citations.MOISTURE)
            .source(Citations.FACTORS)
            .source(Citations.PANEL)
            .source(Citations.HEAD)
            .caution(Cautions.STRUCTURE)
            .caution(Caution.CODE_AUTHORITY)
            .validation("A solved example of the American Wood Council comes back; others computed a second time by"
                    + " independent code.")
            .by(FastenerWithdrawal::compute);

    private FastenerWithdrawal() {}

    /** How the fastener lies in the wood. */
    public enum Grain implements Labelled {
        SIDE("side grain"),
        END("end grain");

        private final String label;

        Grain(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** A fastener, the wood that holds it, and the wind. */
    public record Input(
            @Entry(label = "Fastener") Fastener fastener,

            @Entry(label = "Wood that holds") HoldingWood wood,

            @Quantity(
                    label = "Its oven-dry specific gravity",
                    symbol = "G",
                    unit = Unit.ONE,
                    min = 0.3,
                    max = 0.9,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Leave out to take that of the wood named above.")
            @Nullable
            Double gravity,

            @Quantity(
                    label = "Diameter of the shank",
                    symbol = "D",
                    unit = Unit.SMALL_METRE,
                    min = 0.001,
                    max = 0.03,
                    limitSource = Citations.PLAUSIBLE)
            double diameterM,

            @Quantity(
                    label = "Length of the fastener",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 0.6,
                    limitSource = Citations.PLAUSIBLE)
            double lengthM,

            @Quantity(
                    label = "What it passes before it reaches that wood",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.5,
                    limitSource = Citations.PLAUSIBLE,
                    help =
                            "Board, battens and insulation together; sheathing counts when it is not the wood that holds.")
            double passesM,

            @Quantity(
                    label = "Threaded or ringed part, without the tip",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 0.6,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Required for ring-shank nails and for screws.")
            @Nullable
            Double threadedM,

            @Quantity(
                    label = "Tip that does not hold",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.05,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Of a lag screw; 0 for nails.")
            double tipM,

            @Entry(label = "In") Grain grain,

            @Entry(label = "Toe-nailed") boolean toeNailed,

            @Entry(label = "Moisture of the wood") WoodService moisture,

            @Quantity(
                    label = "Load duration",
                    symbol = "CD",
                    unit = Unit.ONE,
                    min = 0.9,
                    max = 2,
                    limitSource = "NDS-2018 table 2.3.2 (from memory)",
                    help = "1.6 for wind.")
            double durationFactor,

            @Quantity(
                    label = "Temperature",
                    symbol = "Ct",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 1,
                    limitSource = "NDS-2018 table 11.3.4 (from memory)",
                    help = "1 up to 38 °C.")
            double temperatureFactor,

            @Quantity(
                    label = "Suction on the cladding, allowable-stress level",
                    unit = Unit.WIND_PASCAL,
                    min = 0,
                    max = 20000,
                    limitSource = Citations.PLAUSIBLE,
                    help = "0.6 times the pressure of the wind calculation.")
            @Nullable
            Double suctionPa,

            @Quantity(
                    label = "Cladding that one fastener holds",
                    unit = Unit.SMALL_SQUARE_METRE,
                    min = 0,
                    max = 10,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Board face times spacing of the supports, over fasteners at each.")
            @Nullable
            Double areaM2) {}

    /** What it holds. */
    public record Result(
            @Quantity(
                    label = "Withdrawal for each length of penetration",
                    symbol = "W",
                    unit = Unit.NEWTON_PER_METRE,
                    step = 0.1)
            double withdrawalNPerM,

            @Quantity(label = "Penetration that holds", symbol = "p", unit = Unit.SMALL_METRE, step = 1e-6)
            double penetrationM,

            @Quantity(label = "Moisture", symbol = "CM", unit = Unit.ONE, step = 0.01)
            double moistureFactor,

            @Quantity(label = "End grain", symbol = "Ceg", unit = Unit.ONE, step = 0.01)
            double endGrainFactor,

            @Quantity(label = "Toe-nailing", symbol = "Ctn", unit = Unit.ONE, step = 0.01)
            double toeNailFactor,

            @Quantity(label = "Allowable withdrawal", symbol = "W'", unit = Unit.NEWTON, step = 0.1, leading = true)
            double allowableN,

            @Quantity(label = "Demand", unit = Unit.NEWTON, step = 0.1) @Nullable
            Double demandN,

            @Quantity(label = "Demand over allowable", unit = Unit.ONE, step = 0.001, leading = true) @Nullable
            Double ratio,

            @Nullable @Entry(label = "Demand within the allowable")
            Verdict verdict,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double withdrawal = input.fastener().withdrawalNPerM(gravity(input), input.diameterM());
        double penetration = penetrationM(input);
        double moisture = input.fastener().moistureFactor(input.moisture());
        double endGrain = endGrainFactor(input);
        double toe = toeNailFactor(input);
        double allowable = withdrawal
                * penetration
                * input.durationFactor()
                * moisture
                * input.temperatureFactor()
                * endGrain
                * toe;
        Double suction = input.suctionPa();
        Double area = input.areaM2();
        Double demand = suction == null || area == null ? null : (Double) (suction * area);
        return new Result(
                withdrawal,
                penetration,
                moisture,
                endGrain,
                toe,
                allowable,
                demand,
                demand == null ? null : (Double) (demand / allowable),
                demand == null ? null : Verdict.atMost(demand, 0, allowable),
                notices(input, moisture));
    }

    private static double gravity(Input input) {
        Double own = input.gravity();
        Double known = own != null ? own : input.wood().gravityFor(input.fastener());
        if (known == null) {
            throw Refused.of(
                    "gravity",
                    "",
                    "No specific gravity is known for " + input.fastener().label() + " in "
                            + input.wood().label() + "; give it (0.3 to 0.9), with its source.",
                    Citations.PANEL);
        }
        return known;
    }

    private static double penetrationM(Input input) {
        double inWood = input.lengthM() - input.passesM() - input.tipM();
        if (input.fastener().holdsByThread()) {
            Double threaded = input.threadedM();
            if (threaded == null) {
                throw Refused.of(
                        "threadedM",
                        "",
                        "Give the threaded or ringed part of the "
                                + input.fastener().label() + ": only that part holds.",
                        Citations.RING);
            }
            inWood = Math.min(inWood, threaded);
        }
        if (!(inWood > 0)) {
            throw Refused.of(
                    "lengthM",
                    Double.toString(input.lengthM()),
                    String.format(
                            Locale.ROOT,
                            "The fastener is %.0f mm long and passes %.0f mm with a tip of %.0f mm: it does not reach"
                                    + " the wood.",
                            1000 * input.lengthM(),
                            1000 * input.passesM(),
                            1000 * input.tipM()),
                    Citations.FACTORS);
        }
        return inWood;
    }

    private static double endGrainFactor(Input input) {
        if (input.grain() == Grain.SIDE) {
            return 1;
        }
        if (input.fastener() != Fastener.LAG_SCREW) {
            throw Refused.of(
                    "grain",
                    Grain.END.name(),
                    "Nails and wood screws are given no withdrawal from end grain.",
                    Citations.FACTORS);
        }
        return LAG_END_GRAIN;
    }

    private static double toeNailFactor(Input input) {
        if (!input.toeNailed()) {
            return 1;
        }
        if (!input.fastener().isNail()) {
            throw Refused.of("toeNailed", "true", "Only nails are toe-nailed.", Citations.FACTORS);
        }
        return TOE_NAILED;
    }

    private static List<Notice> notices(Input input, double moistureFactor) {
        List<Notice> said = new ArrayList<>();
        said.add(Notice.advice(
                "check-head-pull-through",
                "fastener",
                "The head may pull through the board before the shank lets go: check it apart.",
                Citations.HEAD));
        if (moistureFactor < 1) {
            said.add(Notice.advice(
                    "moisture-takes-hold",
                    "moisture",
                    String.format(
                            Locale.ROOT,
                            "Wood that is wet or passes through 19 %% leaves this fastener %.0f %% of its hold. Ring-shank"
                                    + " nails keep theirs.",
                            100 * moistureFactor),
                    Citations.MOISTURE));
        }
        if (input.fastener() == Fastener.SMOOTH_STAINLESS_NAIL) {
            said.add(Notice.advice(
                    "smooth-stainless-holds-less",
                    "fastener",
                    "A smooth stainless nail holds less than a plain steel one of its size: take ring-shank stainless"
                            + " nails.",
                    Citations.STAINLESS));
        }
        return List.copyOf(said);
    }
}
