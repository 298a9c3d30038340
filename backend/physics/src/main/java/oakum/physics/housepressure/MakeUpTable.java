package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** The make-up air table of Minnesota: the rule of one place, not physics. */
public final class MakeUpTable {
    /** What the table counts for a vented dryer. */
    private static final double DRYER_M3_PER_S = 135 * PressureNotices.CFM;

    private static final double PART_OF_EXHAUST = 0.8;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "make-up-table", "1.0", "Make-up air by the Minnesota table", Input.class, Result.class)
            .purpose("Fills in the make-up air table of one place, Minnesota; the house pressure itself is another"
                    + " calculation.")
            .equation(
                    "Qmu = Qcont + 135 cfm for a vented dryer + 0.8 Qlargest + 0.8 Qnext (not in column A) − pf A",
                    Citations.MINNESOTA)
            .source(Citations.MINNESOTA)
            .caution(Cautions.COMBUSTION)
            .caution(Cautions.GAS)
            .caution(Caution.CODE_AUTHORITY)
            .validation("A filled-in permit form of a Minnesota city agrees; two more lines computed independently.")
            .by(MakeUpTable::compute);

    private MakeUpTable() {}

    /** The lines of the form. */
    public record Input(
            @Entry(label = "Column") TableColumn column,

            @Quantity(
                    label = "Conditioned floor area with basement, finished or not",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 10,
                    max = 2000,
                    limitSource = InputRange.MODEL_CODE)
            double floorAreaM2,

            @Quantity(
                    label = "Continuous exhaust-only ventilation",
                    symbol = "Qcont",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.MODEL_CODE,
                    help = "0 with a balanced ventilator.")
            double continuousExhaustM3PerS,

            @Entry(label = "Vented dryer", help = "Counts as 135 cfm; a ventless one counts nothing.")
            boolean ventedDryer,

            @Quantity(
                    label = "Largest exhaust",
                    symbol = "Qlargest",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 2,
                    limitSource = InputRange.MODEL_CODE,
                    help = "0 where it recirculates, or has interlocked make-up air that matches it.")
            double largestExhaustM3PerS,

            @Quantity(
                    label = "Next largest exhaust",
                    symbol = "Qnext",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 2,
                    limitSource = InputRange.MODEL_CODE,
                    help = "Not counted in column A.")
            double nextLargestExhaustM3PerS,

            @Nullable @Entry(label = "Edition", maxLength = 60, help = "The edition of the rule adopted there.")
            String edition,

            @Nullable
            @Entry(label = "Confirmed by", maxLength = 80, help = "Who confirmed that it holds for this house.")
            String confirmedBy) {}

    /** What the form requires. */
    public record Result(
            @Quantity(
                    label = "Make-up air",
                    symbol = "Qmu",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-5,
                    leading = true,
                    help = "0 where the table requires none.")
            double makeUpM3PerS,

            @Quantity(label = "Exhaust counted", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
            double exhaustM3PerS,

            @Quantity(label = "Leakage credited", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
            double leakageM3PerS,

            @Quantity(
                    label = "Exhaust less leakage",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-5,
                    help = "Negative: none is required.")
            double balanceM3PerS,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double exhaust = input.continuousExhaustM3PerS()
                + (input.ventedDryer() ? DRYER_M3_PER_S : 0)
                + PART_OF_EXHAUST * input.largestExhaustM3PerS()
                + (input.column() == TableColumn.A ? 0 : PART_OF_EXHAUST * input.nextLargestExhaustM3PerS());
        double leakage = input.column().leakageM3PerSM2() * input.floorAreaM2();
        return new Result(Math.max(0, exhaust - leakage), exhaust, leakage, exhaust - leakage, notices(input));
    }

    private static List<Notice> notices(Input input) {
        List<Notice> said = new ArrayList<>();
        said.add(Notice.advice(
                "table-is-no-pressure",
                "makeUpM3PerS",
                "The table credits more leakage than a tight house has: compute the house pressure as well.",
                Citations.PROPOSED));
        if (PressureNotices.isEmpty(input.edition()) || PressureNotices.isEmpty(input.confirmedBy())) {
            said.add(Notice.advice(
                    "rule-not-confirmed",
                    "confirmedBy",
                    "The table is the rule of one place: say which edition is adopted and who confirmed it.",
                    Citations.PROPOSED));
        }
        return List.copyOf(said);
    }
}
