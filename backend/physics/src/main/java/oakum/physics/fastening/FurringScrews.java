package oakum.physics.fastening;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;

/** Screws that carry furring through exterior insulation, as beams alone: a check of sense, no design. */
public final class FurringScrews {
    private static final double STEEL_PA = 200e9;
    private static final double USUAL_LIMIT_M = Imperial.INCH_M / 16;
    private static final double LEAST_PENETRATION_M = 1.5 * Imperial.INCH_M;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "furring-screws",
                    "1.0",
                    "Furring over exterior insulation: screws as beams",
                    Input.class,
                    Result.class)
            .purpose("Bounds how far screws alone would let a cladding sag that hangs on furring over exterior"
                    + " insulation.")
            .equation("k = 12 E I/L³, I = π d⁴/64, sag = weight/k", Citations.BEAM)
            .equation("penetration into studs ≥ 38 mm (1 1/2 in.)", Citations.PENETRATION)
            .source(Citations.FURRING)
            .source(Citations.FURRING_LIMIT)
            .source(Citations.PENETRATION)
            .caution(Cautions.STRUCTURE)
            .caution(Caution.CODE_AUTHORITY)
            .validation("No published example was found; computed a second time by independent code. The prescriptive"
                    + " tables were not seen.")
            .by(FurringScrews::compute);

    private FurringScrews() {}

    /** Screws and what hangs on them. */
    public record Input(
            @Quantity(
                    label = "Core diameter of the screw",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0.002,
                    max = 0.02,
                    limitSource = Citations.PLAUSIBLE)
            double diameterM,

            @Quantity(
                    label = "From the furring to the wood that holds",
                    symbol = "L",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 0.5,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Thickness of the insulation; sheathing counts too.")
            double gapM,

            @Quantity(
                    label = "Weight on one screw",
                    unit = Unit.NEWTON,
                    min = 0,
                    max = 2000,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Cladding and furring; 10 psf on 400 × 600 mm are about 115 N.")
            double weightN,

            @Quantity(
                    label = "Penetration into the stud",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = Citations.PLAUSIBLE)
            double penetrationM) {}

    /** The bound. */
    public record Result(
            @Quantity(label = "Stiffness of the screw alone", symbol = "k", unit = Unit.NEWTON_PER_METRE, step = 1)
            double stiffnessNPerM,

            @Quantity(label = "Sag with the screw alone", unit = Unit.SMALL_METRE, step = 1e-6, leading = true)
            double sagM,

            @Entry(label = "Penetration into the stud") Verdict penetration,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double inertia = Math.PI * Math.pow(input.diameterM(), 4) / 64;
        double stiffness = 12 * STEEL_PA * inertia / Math.pow(input.gapM(), 3);
        double sag = input.weightN() / stiffness;
        List<Notice> said = new ArrayList<>();
        said.add(Notice.advice(
                "bound-only",
                "sagM",
                "A check of sense and no design: insulation, friction and the slant of the screws carry too, and wood"
                        + " gives way. Use the prescriptive tables of the adopted code or an engineer.",
                Citations.FURRING));
        if (sag > USUAL_LIMIT_M) {
            said.add(Notice.advice(
                    "screws-alone-sag",
                    "sagM",
                    String.format(
                            Locale.ROOT,
                            "Screws alone would sag %.1f mm, more than the 1.6 mm (1/16 in.) that tests were held to: the"
                                    + " insulation must act as a strut, or slanted screws must carry.",
                            1000 * sag),
                    Citations.FURRING_LIMIT));
        }
        return new Result(
                stiffness,
                sag,
                input.penetrationM() >= LEAST_PENETRATION_M ? Verdict.PASSES : Verdict.FAILS,
                List.copyOf(said));
    }
}
