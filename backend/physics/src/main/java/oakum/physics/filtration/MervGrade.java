package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** The grade that three measured efficiencies make, by edition. */
public final class MervGrade {
    private static final Source TABLE_2017 = Source.fromMemory("ASHRAE 52.2-2017 table 12-1");
    private static final Source TABLE_2007 = Source.seen("ASHRAE 52.2-2007 table 12-1, as reprinted by the trade");

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "merv-grade", "1.0", "Filter grade from efficiencies", Input.class, Output.class)
            .purpose("Gives the grade of a filter from its efficiencies in three particle sizes, by edition.")
            .equation("the highest grade whose least E1, E2 and E3 are all reached", TABLE_2017)
            .equation(
                    "least final resistance of the test: 75, 149, 249 or 349 Pa, or twice the initial drop", TABLE_2007)
            .source(TABLE_2017)
            .source(TABLE_2007)
            .validation(
                    "Three sets of efficiencies graded by hand from the printed tables; no published example found.")
            .by(MervGrade::compute);

    private MervGrade() {}

    /** Composite efficiencies in the three size groups. */
    public record Input(
            @Quantity(
                    label = "Efficiency at 0.3 to 1.0 µm",
                    symbol = "E1",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = ParticleBalance.SHARE,
                    help = "Composite efficiency from the maker's test report.")
            double e1Fraction,

            @Quantity(
                    label = "Efficiency at 1.0 to 3.0 µm",
                    symbol = "E2",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = ParticleBalance.SHARE,
                    help = "Composite efficiency from the maker's test report.")
            double e2Fraction,

            @Quantity(
                    label = "Efficiency at 3.0 to 10 µm",
                    symbol = "E3",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = ParticleBalance.SHARE,
                    help = "Composite efficiency from the maker's test report.")
            double e3Fraction,

            @Entry(
                    label = "Edition of the standard",
                    help = "The same filter may carry another grade by an older table.")
            Merv.Edition edition) {}

    /** The grade, and what the other edition would say. */
    public record Output(
            @Quantity(label = "Grade (MERV)", unit = Unit.ONE, step = 1, leading = true) @Nullable
            Integer merv,

            @Quantity(label = "Grade by the other edition", unit = Unit.ONE, step = 1) @Nullable
            Integer otherEditionMerv,

            @Quantity(label = "Least final resistance in the test", unit = Unit.PASCAL, step = 1) @Nullable
            Double leastFinalResistancePa,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        Merv.Edition other = in.edition() == Merv.Edition.ED_2017 ? Merv.Edition.ED_2007 : Merv.Edition.ED_2017;
        Integer grade = boxed(Merv.grade(in.e1Fraction(), in.e2Fraction(), in.e3Fraction(), in.edition()));
        Integer elsewhere = boxed(Merv.grade(in.e1Fraction(), in.e2Fraction(), in.e3Fraction(), other));
        List<Notice> notices = new ArrayList<>();
        if (grade == null) {
            notices.add(Notice.advice(
                    "below-grade-5",
                    "e3Fraction",
                    "Below grade 5 the arrestance decides, which is not among these efficiencies.",
                    TABLE_2017));
        } else if (!grade.equals(elsewhere)) {
            notices.add(Notice.note(
                    "editions-differ",
                    "edition",
                    "By the " + in.edition().label() + " table this is MERV " + grade + ", by the " + other.label()
                            + " table " + (elsewhere == null ? "below MERV 5" : "MERV " + elsewhere)
                            + ": write the edition beside the grade.",
                    TABLE_2017));
        }
        return new Output(
                grade, elsewhere, grade == null ? null : Merv.leastFinalResistancePa(grade), List.copyOf(notices));
    }

    private static @Nullable Integer boxed(OptionalInt grade) {
        return grade.isPresent() ? grade.getAsInt() : null;
    }
}
