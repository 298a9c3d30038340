package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;

/** A filter's clean curve from its rated points. */
public final class FilterCurve {
    private static final Source LEAST_SQUARES = Source.commonPractice("least squares through the maker's rated points");
    private static final Source EXPONENTS = Source.proposed("exponent 0.9 to 2.1: between pure drag and an orifice");

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "filter-curve", "1.0", "Filter curve from rated points", Input.class, Output.class)
            .purpose(
                    "Fits a filter's clean pressure drop over airflow, so that it can be read at any airflow and altitude.")
            .equation("power: Δp = c·Q^n, least squares on the logarithms", LEAST_SQUARES)
            .equation("quadratic: Δp = a·v + b·v², v = Q/A, least squares through the origin, a, b ≥ 0", LEAST_SQUARES)
            .source(LEAST_SQUARES)
            .source(EXPONENTS)
            .validation("Two sets of rated points fitted by independent code; no published example found.")
            .by(FilterCurve::compute);

    private FilterCurve() {}

    /** One point of the maker's table. */
    public record Point(
            @Quantity(
                    label = "Airflow",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 50,
                    limitSource = "a drop belongs to some airflow")
            double flowM3PerS,

            @Quantity(
                    label = "Clean drop",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 2500,
                    limitSource = "air filters for houses")
            double dropPa) {}

    /** The points and where to read the curve. */
    public record Input(
            @Entry(label = "Rated points", help = "At standard air, for one filter.", minRows = 2, maxRows = 50)
            List<Point> points,

            @Quantity(
                    label = "Nominal face area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 0.001,
                    max = 20,
                    limitSource = "air filters for houses",
                    help = "Width times height of the nominal size.")
            double faceAreaM2,

            @Quantity(
                    label = "Airflow to read at",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 50,
                    limitSource = "a drop belongs to some airflow")
            double readAtM3PerS) {}

    /** Both fits. */
    public record Output(
            @Quantity(label = "Exponent", symbol = "n", unit = Unit.ONE, step = 0.001)
            double exponent,

            @Quantity(label = "Drop by the power fit", unit = Unit.PASCAL, step = 0.1)
            double powerDropPa,

            @Quantity(label = "Drag part", symbol = "a", unit = Unit.PASCAL_PER_VELOCITY, step = 0.01, leading = true)
            double linearPaSPerM,

            @Quantity(
                    label = "Inertia part",
                    symbol = "b",
                    unit = Unit.PASCAL_PER_VELOCITY_SQUARED,
                    step = 0.01,
                    leading = true)
            double squarePaS2PerM2,

            @Quantity(label = "Drop by the quadratic fit", unit = Unit.PASCAL, step = 0.1, leading = true)
            double quadraticDropPa,

            @Quantity(label = "Greatest misfit of the quadratic", unit = Unit.PASCAL, step = 0.1)
            double misfitPa,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        double[] flow = in.points().stream().mapToDouble(Point::flowM3PerS).toArray();
        double[] drop = in.points().stream().mapToDouble(Point::dropPa).toArray();
        requireTwoFlows("points", flow);
        PowerFit power = PowerFit.through(flow, drop);
        CleanCurve curve = curve(flow, drop, in.faceAreaM2());
        double misfit = 0;
        double least = flow[0];
        double most = flow[0];
        for (int i = 0; i < flow.length; i++) {
            misfit = Math.max(misfit, Math.abs(curve.dropPa(flow[i] / in.faceAreaM2(), RATED) - drop[i]));
            least = Math.min(least, flow[i]);
            most = Math.max(most, flow[i]);
        }
        List<Notice> notices = new ArrayList<>();
        if (!power.plausible()) {
            notices.add(Notice.rejected(
                    "no-filter",
                    "points",
                    String.format(
                            "The drop rises with the power %.2f of the airflow; a filter's lies between 0.9 and 2.1."
                                    + " Check the points.",
                            power.b()),
                    EXPONENTS));
        }
        if (in.readAtM3PerS() < least || in.readAtM3PerS() > most) {
            notices.add(Notice.advice(
                    "beyond-points",
                    "readAtM3PerS",
                    "The airflow lies outside the rated points: the curve is a guess there.",
                    LEAST_SQUARES));
        }
        return new Output(
                power.b(),
                power.drop(in.readAtM3PerS()),
                curve.linearPaSPerM(),
                curve.squarePaS2PerM2(),
                curve.dropPa(in.readAtM3PerS() / in.faceAreaM2(), RATED),
                misfit,
                List.copyOf(notices));
    }

    private static final double RATED = CleanCurve.RATED_DENSITY_KG_PER_M3;

    /** The clean curve over velocity from points of one filter at standard air. */
    static CleanCurve curve(double[] flow, double[] drop, double faceAreaM2) {
        QuadraticFit fit = QuadraticFit.through(flow, drop);
        return new CleanCurve(fit.a() * faceAreaM2, fit.b() * faceAreaM2 * faceAreaM2);
    }

    /** Refuses points that all stand at one airflow, or so far apart that the small ones say nothing. */
    static void requireTwoFlows(String field, double[] flow) {
        double least = Arrays.stream(flow).min().orElseThrow();
        double most = Arrays.stream(flow).max().orElseThrow();
        if (most < 1.001 * least || most > 1000 * least) {
            throw new Refused(Violation.of(
                    field,
                    flow.length,
                    "A curve needs rated points at two different airflows at least, none of them less than a thousandth"
                            + " of the greatest.",
                    ""));
        }
    }
}
