package oakum.physics.wood;

import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** How far framing lumber shrinks while a house dries. */
public final class FramingShrinkage {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "framing-shrinkage", "1.0", "Framing lumber: shrinkage", Input.class, Result.class)
            .purpose("Gives the size of a joist, plate or header after it has dried in the house, so that membranes,"
                    + " windows and pipes get the room to follow.")
            .equation(
                    "S = 6.031 − 0.215 M across the width, 5.062 − 0.181 M across the thickness, %", Citations.FRAMING)
            .equation("d2 = d1 (1 − S2/100)/(1 − S1/100)", Citations.FRAMING)
            .source(Citations.FRAMING)
            .caution(new Caution(
                    "Structure",
                    "Joists that shrink beside steel or engineered wood change how loads are carried. A licensed engineer"
                            + " judges it; local code rules."))
            .validation("The worked joist of a university course page lies within its rounding.")
            .by(FramingShrinkage::compute);

    private FramingShrinkage() {}

    /** Which side of the lumber. */
    public enum Side implements Labelled {
        WIDTH("width, the deep side", 6.031, 0.215),
        THICKNESS("thickness, the thin side", 5.062, 0.181);

        private final String label;
        private final double dryPercent;
        private final double perPercent;

        Side(String label, double dryPercent, double perPercent) {
            this.label = label;
            this.dryPercent = dryPercent;
            this.perPercent = perPercent;
        }

        @Override
        public String label() {
            return label;
        }

        /** Share of the size at one moisture that is left at another. */
        double left(double fromFraction, double toFraction) {
            return (1 - shrunkFraction(toFraction)) / (1 - shrunkFraction(fromFraction));
        }

        private double shrunkFraction(double moistureFraction) {
            return (dryPercent - perPercent * 100 * moistureFraction) / 100;
        }
    }

    /** A member that dries. */
    public record Input(
            @Entry(label = "Side") Side side,

            @Quantity(
                    label = "Size when built",
                    symbol = "d1",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 10,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Add the sizes of all members that stand on each other across the grain.")
            double sizeM,

            @Quantity(
                    label = "Moisture when built",
                    symbol = "M1",
                    unit = Unit.FRACTION,
                    min = 0.04,
                    max = 0.28,
                    limitSource = "the lines reach zero shrinkage at 28 %",
                    advisedMin = 0.08,
                    advisedMax = 0.19,
                    advisedSource = "FPL-RP-489 measured 8 to 19 %")
            double builtFraction,

            @Quantity(
                    label = "Moisture later",
                    symbol = "M2",
                    unit = Unit.FRACTION,
                    min = 0.04,
                    max = 0.28,
                    limitSource = "the lines reach zero shrinkage at 28 %",
                    advisedMin = 0.08,
                    advisedMax = 0.19,
                    advisedSource = "FPL-RP-489 measured 8 to 19 %")
            double laterFraction) {}

    /** What is left of it. */
    public record Result(
            @Quantity(label = "Size later", symbol = "d2", unit = Unit.SMALL_METRE, step = 1e-5)
            double sizeLaterM,

            @Quantity(label = "Shrinks by", unit = Unit.SMALL_METRE, step = 1e-5, leading = true)
            double shrinksM,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double later = input.sizeM() * input.side().left(input.builtFraction(), input.laterFraction());
        return new Result(later, input.sizeM() - later, Limits.advice(input));
    }
}
