package oakum.physics.rainscreen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** Holds the plan of a rain-screen against the rules of the trade. */
public final class RainScreenPlan {
    private static final double LEAST_DEPTH_M = 0.021;
    private static final double LEAST_DRAINED_M = 0.010;
    private static final double LEAST_COUNTER_BATTEN_M = 0.016;
    private static final double LEAST_BATTEN_PER_BOARD = 2;
    private static final double WIDEST_SPACING_M = 0.6;
    private static final double WIDEST_SPACING_UNSEASONED_M = 0.4;
    private static final double LEAST_PROPORTION = 4;
    private static final double MOST_PROPORTION = 6;
    private static final double WIDEST_BOARD_M = 0.15;
    private static final double ROUNDING = 1e-9;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "rain-screen-plan", "1.0", "Rain-screen: rules of the plan", Input.class, Result.class)
            .purpose(
                    "Says which rules for drained and ventilated cladding a plan keeps and which it breaks, each with its"
                            + " reason.")
            .equation("cavity ≥ 21 mm; drained gap ≥ 10 mm; counter-batten ≥ 16 mm", Citations.TDCA)
            .equation("support batten ≥ 2 × board thickness; spacing ≤ 600 mm, unseasoned oak 400 mm", Citations.TDCA)
            .equation("4 ≤ board width/thickness ≤ 6, width ≤ 150 mm", Citations.BS_8605)
            .equation("free opening, bottom and top ≥ 1500 mm²/m", Citations.ISO_6946)
            .source(Citations.TDCA)
            .source(Citations.BS_8605)
            .source(Citations.CAPILLARY)
            .source(Citations.ISO_6946)
            .source(Citations.BOTTOM)
            .source(Citations.DRAINAGE)
            .source(Citations.SPAN)
            .caution(Cautions.MOULD)
            .caution(Cautions.FIRE)
            .validation("The rules are those of the sources; each is broken once in a test.")
            .by(RainScreenPlan::compute);

    private RainScreenPlan() {}

    /** Which way the boards run. */
    public enum Boards implements Labelled {
        VERTICAL("vertical"),
        HORIZONTAL("horizontal");

        private final String label;

        Boards(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** What the boards are fastened to. */
    public enum Support implements Labelled {
        VERTICAL_BATTENS("vertical battens alone"),
        HORIZONTAL_BATTENS("horizontal battens alone"),
        HORIZONTAL_ON_COUNTER_BATTENS("horizontal battens on vertical counter-battens");

        private final String label;

        Support(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** An end of the cavity. */
    public enum End implements Labelled {
        OPEN_WITH_MESH("open, with insect mesh"),
        OPEN_WITHOUT_MESH("open, without mesh"),
        SHUT("shut by trim, soffit or sealant");

        private final String label;

        End(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** The lower edge of a membrane. */
    public enum LowerEdge implements Labelled {
        LAPPED_AND_OPEN("laps over the flashing and is open below"),
        BEHIND_FLASHING("tucked behind the flashing"),
        SEALED("taped or sealed shut along its edge");

        private final String label;

        LowerEdge(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** A plan. */
    public record Input(
            @Entry(label = "Boards run") Boards boards,

            @Entry(label = "Boards are fastened to") Support support,

            @Quantity(
                    label = "Clear depth of the cavity",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE)
            double depthM,

            @Quantity(
                    label = "Counter-batten, thickness",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Leave out where there is none.")
            @Nullable
            Double counterBattenM,

            @Quantity(
                    label = "Batten that holds the boards, thickness",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE)
            double battenM,

            @Quantity(
                    label = "Spacing of these battens",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 2,
                    limitSource = Citations.PLAUSIBLE)
            double spacingM,

            @Entry(label = "Upper edge of horizontal battens bevelled 15° outward")
            boolean bevelled,

            @Entry(label = "Boards are unseasoned oak") boolean unseasonedOak,

            @Quantity(
                    label = "Board width",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 1.5,
                    limitSource = Citations.PLAUSIBLE)
            double boardWidthM,

            @Quantity(
                    label = "Board thickness",
                    unit = Unit.SMALL_METRE,
                    min = 0.003,
                    max = 0.1,
                    limitSource = Citations.PLAUSIBLE)
            double boardThicknessM,

            @Quantity(
                    label = "Shortest board along its run",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 10,
                    limitSource = Citations.PLAUSIBLE)
            double shortestBoardM,

            @Entry(label = "Bottom of the cavity") End bottom,

            @Entry(label = "Top of the cavity") End top,

            @Quantity(
                    label = "Free bottom opening",
                    unit = Unit.SQUARE_METRE_PER_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE,
                    help = "What the mesh leaves free.")
            double bottomFreeM2PerM,

            @Quantity(
                    label = "Free top opening",
                    unit = Unit.SQUARE_METRE_PER_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE,
                    help = "What the mesh leaves free.")
            double topFreeM2PerM,

            @Entry(label = "Lower edge of the membrane") LowerEdge membrane,

            @Nullable @Entry(label = "Lower edge of a second membrane", help = "Leave out where there is one only.")
            LowerEdge secondMembrane,

            @Entry(label = "Nothing dams the way down: no batten, no sealant")
            boolean clearWayDown,

            @Entry(label = "Sills and heads have flashings with end dams")
            boolean endDams) {}

    /** What it keeps and breaks. */
    public record Result(
            @Entry(label = "All rules") Verdict verdict,

            @Quantity(label = "Rules broken", unit = Unit.COUNT, leading = true, step = 1)
            int brokenCount,

            @Entry(label = "Rules") List<PlanCheck> checks) {}

    private static Result compute(Input input) {
        List<PlanCheck> checks = new ArrayList<>();
        support(input, checks);
        boards(input, checks);
        openings(input, checks);
        drainage(input, checks);
        int broken =
                (int) checks.stream().filter(c -> c.verdict() == Verdict.FAILS).count();
        return new Result(broken == 0 ? Verdict.PASSES : Verdict.FAILS, broken, List.copyOf(checks));
    }

    private static void support(Input input, List<PlanCheck> checks) {
        boolean horizontalBattens = input.support() != Support.VERTICAL_BATTENS;
        checks.add(PlanCheck.of(
                "support-crosses-boards",
                "Battens cross the boards that they hold",
                horizontalBattens == (input.boards() == Boards.VERTICAL),
                input.boards().label() + " boards, " + input.support().label(),
                Citations.TDCA));
        checks.add(PlanCheck.of(
                "counter-battens",
                "Horizontal battens sit on vertical counter-battens",
                input.support() != Support.HORIZONTAL_BATTENS,
                input.support() == Support.HORIZONTAL_BATTENS
                        ? "one layer of horizontal battens dams water and air"
                        : input.support().label(),
                Citations.TDCA));
        if (input.support() == Support.HORIZONTAL_ON_COUNTER_BATTENS) {
            Double thickness = input.counterBattenM();
            String rule = "Counter-batten at least 16 mm";
            checks.add(
                    thickness == null
                            ? PlanCheck.unknown("counter-batten-depth", rule, "no thickness given", Citations.TDCA)
                            : PlanCheck.of(
                                    "counter-batten-depth",
                                    rule,
                                    atLeast(thickness, LEAST_COUNTER_BATTEN_M),
                                    mm(thickness),
                                    Citations.TDCA));
        }
        if (horizontalBattens) {
            checks.add(PlanCheck.of(
                    "batten-bevel",
                    "Upper edge of horizontal battens bevelled 15° outward",
                    input.bevelled(),
                    input.bevelled() ? "bevelled" : "water stands on a square edge",
                    Citations.TDCA));
        }
        checks.add(PlanCheck.of(
                "batten-thickness",
                "Support batten at least twice the board's thickness",
                atLeast(input.battenM(), LEAST_BATTEN_PER_BOARD * input.boardThicknessM()),
                mm(input.battenM()) + " under boards of " + mm(input.boardThicknessM()),
                Citations.TDCA));
        double widest = input.unseasonedOak() ? WIDEST_SPACING_UNSEASONED_M : WIDEST_SPACING_M;
        checks.add(PlanCheck.of(
                "batten-spacing",
                "Battens at most " + mm(widest) + " apart",
                atLeast(widest, input.spacingM()),
                mm(input.spacingM()),
                Citations.TDCA));
        checks.add(PlanCheck.of(
                "reaches-two-supports",
                "Every board reaches two battens",
                input.shortestBoardM() > input.spacingM(),
                "shortest board " + mm(input.shortestBoardM()) + ", battens " + mm(input.spacingM()) + " apart",
                Citations.SPAN));
    }

    private static void boards(Input input, List<PlanCheck> checks) {
        double proportion = input.boardWidthM() / input.boardThicknessM();
        checks.add(PlanCheck.of(
                "board-proportion",
                "Board 4 to 6 times as wide as thick",
                atLeast(proportion, LEAST_PROPORTION) && atLeast(MOST_PROPORTION, proportion),
                String.format(Locale.ROOT, "%.1f : 1", proportion),
                Citations.BS_8605));
        checks.add(PlanCheck.of(
                "board-width",
                "Board at most 150 mm wide",
                atLeast(WIDEST_BOARD_M, input.boardWidthM()),
                mm(input.boardWidthM()),
                Citations.BS_8605));
    }

    private static void openings(Input input, List<PlanCheck> checks) {
        checks.add(PlanCheck.of(
                "cavity-depth",
                "Cavity at least 21 mm behind timber",
                atLeast(input.depthM(), LEAST_DEPTH_M),
                mm(input.depthM()),
                Citations.TDCA));
        end("bottom", input.bottom(), input.bottomFreeM2PerM(), checks);
        end("top", input.top(), input.topFreeM2PerM(), checks);
    }

    private static void end(String which, End end, double freeM2PerM, List<PlanCheck> checks) {
        double open = end == End.SHUT ? 0 : freeM2PerM;
        checks.add(PlanCheck.of(
                which + "-opening",
                "At least 1500 mm²/m free at the " + which,
                atLeast(open, CavityVentilation.WELL_FROM_M2_PER_M),
                end == End.SHUT ? end.label() : String.format(Locale.ROOT, "%.0f mm²/m", 1e6 * open),
                Citations.ISO_6946));
        checks.add(PlanCheck.of(
                which + "-mesh",
                "Insect mesh in the opening at the " + which,
                end != End.OPEN_WITHOUT_MESH,
                end.label(),
                Citations.TDCA));
    }

    private static void drainage(Input input, List<PlanCheck> checks) {
        checks.add(PlanCheck.of(
                "drained-gap",
                "Drained gap at least 10 mm",
                atLeast(input.depthM(), LEAST_DRAINED_M),
                mm(input.depthM()),
                Citations.CAPILLARY));
        checks.add(PlanCheck.of(
                "bottom-drains",
                "The bottom of the cavity is open to let water out",
                input.bottom() != End.SHUT,
                input.bottom().label(),
                Citations.BOTTOM));
        checks.add(PlanCheck.of(
                "way-down",
                "An unbroken way down for water",
                input.clearWayDown(),
                input.clearWayDown() ? "clear" : "a batten or sealant dams it",
                Citations.DRAINAGE));
        checks.add(PlanCheck.of(
                "end-dams",
                "Sill and head flashings with end dams",
                input.endDams(),
                input.endDams() ? "shown" : "not shown",
                Citations.DRAINAGE));
        checks.add(edge("membrane-edge", "Membrane laps over the flashing and drains below", input.membrane()));
        LowerEdge second = input.secondMembrane();
        if (second != null) {
            checks.add(edge("second-membrane-edge", "Second membrane laps over the flashing and drains below", second));
        }
    }

    private static PlanCheck edge(String id, String rule, LowerEdge edge) {
        String reason = switch (edge) {
            case LAPPED_AND_OPEN -> edge.label();
            case BEHIND_FLASHING -> "water runs behind the flashing";
            case SEALED -> "water behind it is trapped";
        };
        return PlanCheck.of(id, rule, edge == LowerEdge.LAPPED_AND_OPEN, reason, Citations.BOTTOM);
    }

    private static boolean atLeast(double value, double least) {
        return value >= least - ROUNDING;
    }

    private static String mm(double metres) {
        return String.format(Locale.ROOT, "%.0f mm", 1000 * metres);
    }
}
