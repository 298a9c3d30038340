package oakum.physics.fastening;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** Wind on the cladding of a low house. */
public final class CladdingWind {
    private static final double HALF_DENSITY_KG_PER_M3 = 0.613;
    private static final double ENCLOSED = 0.18;
    private static final double LEAST_PA = 16 * Imperial.POUND_PER_SQUARE_FOOT_PA;
    private static final double ALLOWABLE_STRESS = 0.6;
    private static final double LOW_SLOPE_FACTOR = 0.9;
    private static final double LOW_SLOPE_DEG = 10;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "cladding-wind", "1.0", "Cladding: wind suction", Input.class, Result.class)
            .purpose("Gives the wind pressure that pulls on and pushes a wall cladding of an enclosed house up to 18 m"
                    + " high.")
            .equation("qh = 0.613 Kh Kzt Kd Ke V²", Citations.WIND)
            .equation("Kh = 2.01 (z/zg)^(2/α), z ≥ 4.6 m; in exposure B at least 0.70", Citations.WIND)
            .equation("p = qh (GCp ∓ 0.18), at least 16 psf; allowable-stress level 0.6 p", Citations.WIND)
            .equation(
                    "GCp: zone 4 −1.1, zone 5 −1.4 up to 10 ft², −0.8 from 500 ft², straight in log A; inward 1.0 to"
                            + " 0.7; × 0.9 up to 10° roof slope",
                    Citations.WIND)
            .equation("A = span · max(width, span/3)", Citations.WIND)
            .source(Citations.WIND)
            .source(Citations.WIND_MEMORY)
            .source(Citations.EQUALISING)
            .caution(Cautions.STRUCTURE)
            .caution(Caution.CODE_AUTHORITY)
            .validation("No published example was found; computed a second time by independent code.")
            .by(CladdingWind::compute);

    private CladdingWind() {}

    /** A house in the wind, and a piece of its cladding. */
    public record Input(
            @Quantity(
                    label = "Basic wind speed of the place",
                    symbol = "V",
                    unit = Unit.WIND_METRE_PER_SECOND,
                    min = 20,
                    max = 100,
                    limitSource = Citations.PLAUSIBLE,
                    help = "From the adopted code's map, with its risk category.")
            double windMPerS,

            @Entry(label = "Exposure") WindExposure exposure,

            @Quantity(
                    label = "Mean roof height",
                    symbol = "h",
                    unit = Unit.METRE,
                    min = 1,
                    max = 18.288,
                    limitSource = "the coefficients are for houses up to 60 ft")
            double heightM,

            @Quantity(
                    label = "Hill",
                    symbol = "Kzt",
                    unit = Unit.ONE,
                    min = 1,
                    max = 4,
                    limitSource = Citations.PLAUSIBLE,
                    help = "1 on flat ground; an engineer sets it on hills and ridges.")
            double hillFactor,

            @Quantity(
                    label = "Direction",
                    symbol = "Kd",
                    unit = Unit.ONE,
                    min = 0.85,
                    max = 1,
                    limitSource = "ASCE 7-16 table 26.6-1 (from memory)",
                    help = "0.85.")
            double directionFactor,

            @Quantity(
                    label = "Ground elevation",
                    symbol = "Ke",
                    unit = Unit.ONE,
                    min = 0.6,
                    max = 1.05,
                    limitSource = "ASCE 7-16 table 26.9-1 (from memory)",
                    help = "1 is always allowed.")
            double elevationFactor,

            @Entry(
                    label = "Place on the wall",
                    help =
                            "The corner strip is a tenth of the house's lesser width or 0.4 of its height, the smaller of"
                                    + " the two, and 0.9 m (3 ft) at least (ASCE 7-16, from memory).")
            WallZone zone,

            @Quantity(label = "Roof slope", unit = Unit.DEGREE, min = 0, max = 80, limitSource = Citations.PLAUSIBLE)
            double roofSlopeDeg,

            @Quantity(
                    label = "Span of the board between its supports",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 10,
                    limitSource = Citations.PLAUSIBLE)
            double spanM,

            @Quantity(
                    label = "Width that it carries",
                    unit = Unit.SMALL_METRE,
                    min = 0.02,
                    max = 10,
                    limitSource = Citations.PLAUSIBLE)
            double widthM) {}

    /** What the wind does. */
    public record Result(
            @Quantity(label = "Exposure coefficient", symbol = "Kh", unit = Unit.ONE, step = 0.001)
            double exposureCoefficient,

            @Quantity(label = "Velocity pressure", symbol = "qh", unit = Unit.WIND_PASCAL, step = 0.1)
            double velocityPa,

            @Quantity(label = "Effective wind area", symbol = "A", unit = Unit.SQUARE_METRE, step = 0.0001)
            double effectiveM2,

            @Quantity(label = "Outward coefficient", symbol = "GCp", unit = Unit.ONE, step = 0.001)
            double suctionCoefficient,

            @Quantity(label = "Suction", symbol = "p", unit = Unit.WIND_PASCAL, step = 0.1, leading = true)
            double suctionPa,

            @Quantity(label = "Inward pressure", unit = Unit.WIND_PASCAL, step = 0.1)
            double inwardPa,

            @Quantity(
                    label = "Suction, allowable-stress level",
                    symbol = "0.6 p",
                    unit = Unit.WIND_PASCAL,
                    step = 0.1,
                    leading = true)
            double allowableSuctionPa,

            @Quantity(label = "Inward, allowable-stress level", unit = Unit.WIND_PASCAL, step = 0.1)
            double allowableInwardPa,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double exposure = input.exposure().coefficient(input.heightM());
        double velocity = HALF_DENSITY_KG_PER_M3
                * exposure
                * input.hillFactor()
                * input.directionFactor()
                * input.elevationFactor()
                * input.windMPerS()
                * input.windMPerS();
        double area = input.spanM() * Math.max(input.widthM(), input.spanM() / 3);
        double slope = input.roofSlopeDeg() <= LOW_SLOPE_DEG ? LOW_SLOPE_FACTOR : 1;
        double outward = slope * input.zone().suctionCoefficient(area);
        double inward = slope * input.zone().pressureCoefficient(area);
        double suction = Math.max(velocity * (ENCLOSED - outward), LEAST_PA);
        double pressure = Math.max(velocity * (ENCLOSED + inward), LEAST_PA);
        List<Notice> said = new ArrayList<>();
        said.add(Notice.note(
                "no-pressure-equalisation",
                "suctionPa",
                "Boards over a vented cavity carry a part of this only, but no general value is known: the whole is"
                        + " shown.",
                Citations.EQUALISING));
        if (suction == LEAST_PA) {
            said.add(Notice.note(
                    "least-wind", "suctionPa", "The least pressure of the standard governs.", Citations.WIND_MEMORY));
        }
        return new Result(
                exposure,
                velocity,
                area,
                outward,
                suction,
                pressure,
                ALLOWABLE_STRESS * suction,
                ALLOWABLE_STRESS * pressure,
                List.copyOf(said));
    }
}
