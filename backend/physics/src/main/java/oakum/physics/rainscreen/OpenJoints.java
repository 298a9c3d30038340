package oakum.physics.rainscreen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** What open joints and days in the sun ask of the membrane behind a cladding. */
public final class OpenJoints {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "open-joints", "1.0", "Open joints and sun on the membrane", Input.class, Result.class)
            .purpose(
                    "Holds the joints of a cladding and the days its membrane lies in the sun against the membrane's own"
                            + " limits.")
            .equation("open share = joint/(joint + board)", Citations.PROPOSED)
            .equation("days left = limit − days used, counted from the day it was fixed", Citations.MEMBRANE)
            .source(Citations.OPEN_JOINTS)
            .source(Citations.MEMBRANE)
            .source(Citations.EN_13859)
            .caution(Cautions.FIRE)
            .validation("The limits are the membrane's own; each is crossed from both sides in a test. No published"
                    + " example was found.")
            .by(OpenJoints::compute);

    private OpenJoints() {}

    /** A cladding and the membrane behind it. */
    public record Input(
            @Quantity(
                    label = "Open joint",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.2,
                    limitSource = Citations.PLAUSIBLE,
                    help = "0 for boards that lap or interlock.")
            double jointM,

            @Quantity(
                    label = "Visible board between the joints",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 3,
                    limitSource = Citations.PLAUSIBLE)
            double boardM,

            @Nullable
            @Entry(
                    label = "Membrane is rated for walls that do not shut out the sun",
                    help = "From its data sheet; leave out where it is not known.")
            Boolean ratedForSun,

            @Quantity(
                    label = "Widest joint that the membrane allows",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.2,
                    limitSource = Citations.PLAUSIBLE,
                    help = "From its data sheet.")
            @Nullable
            Double jointLimitM,

            @Quantity(
                    label = "Largest open share that the membrane allows",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "a share",
                    help = "From its data sheet.")
            @Nullable
            Double openLimitFraction,

            @Quantity(
                    label = "Days in the sun that the membrane allows before it is clad",
                    unit = Unit.DAY,
                    min = 0,
                    max = 3650,
                    limitSource = Citations.PLAUSIBLE,
                    help = "From its data sheet.")
            @Nullable
            Double sunLimitD,

            @Quantity(
                    label = "Days in the sun so far",
                    unit = Unit.DAY,
                    min = 0,
                    max = 3650,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Counted from the day it was fixed.")
            double usedD,

            @Quantity(
                    label = "Days until it is clad",
                    unit = Unit.DAY,
                    min = 0,
                    max = 3650,
                    limitSource = Citations.PLAUSIBLE)
            double plannedD) {}

    /** What the membrane stands. */
    public record Result(
            @Quantity(
                    label = "Open share of the cladding",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    leading = true,
                    limitField = "openLimitFraction")
            double openFraction,

            @Entry(label = "Rated for sun through the joints")
            Verdict permanentSun,

            @Entry(label = "Joint within the membrane's limit")
            Verdict joint,

            @Entry(label = "Open share within the membrane's limit")
            Verdict openShare,

            @Entry(label = "Sun until clad within the membrane's limit")
            Verdict sunUntilClad,

            @Quantity(
                    label = "Sun days left now",
                    unit = Unit.DAY,
                    step = 0.1,
                    leading = true,
                    help = "Negative where the limit is passed.")
            @Nullable
            Double leftD,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        boolean open = input.jointM() > 0;
        double share = input.jointM() / (input.jointM() + input.boardM());
        Double sunLimit = input.sunLimitD();
        Boolean rated = input.ratedForSun();
        Verdict permanent = Verdict.PASSES;
        if (open) {
            permanent = rated == null ? Verdict.NOT_PROVEN : rated ? Verdict.PASSES : Verdict.FAILS;
        }
        return new Result(
                share,
                permanent,
                open ? atMost(input.jointM(), input.jointLimitM()) : Verdict.PASSES,
                open ? atMost(share, input.openLimitFraction()) : Verdict.PASSES,
                atMost(input.usedD() + input.plannedD(), sunLimit),
                sunLimit == null ? null : (Double) (sunLimit - input.usedD()),
                notices(input, open));
    }

    /** Not proven where the membrane's limit is not known. */
    private static Verdict atMost(double value, @Nullable Double limit) {
        return limit == null ? Verdict.NOT_PROVEN : Verdict.atMost(value, 0, limit);
    }

    private static List<Notice> notices(Input input, boolean open) {
        List<Notice> said = new ArrayList<>();
        if (open && (input.ratedForSun() == null || input.jointLimitM() == null || input.openLimitFraction() == null)) {
            said.add(Notice.advice(
                    "ask-for-joint-limits",
                    input.ratedForSun() == null ? "ratedForSun" : "jointLimitM",
                    "Ask the membrane's maker for its rating behind open joints, its widest joint and its largest open"
                            + " share; many membranes have none.",
                    Citations.MEMBRANE));
        }
        if (open && Boolean.FALSE.equals(input.ratedForSun())) {
            said.add(Notice.advice(
                    "membrane-not-for-open-joints",
                    "ratedForSun",
                    "Sun through the joints ages this membrane for as long as the cladding stands. Close the joints or"
                            + " change the membrane before it is fixed.",
                    Citations.EN_13859));
        }
        if (open) {
            said.add(Notice.note(
                    "open-joints-rain",
                    "jointM",
                    "Open joints let more rain to the membrane: deepen the cavity and simulate the wall with that rain.",
                    Citations.OPEN_JOINTS));
        }
        Double limit = input.sunLimitD();
        if (limit == null) {
            said.add(Notice.advice(
                    "ask-for-sun-days",
                    "sunLimitD",
                    "Ask the membrane's maker how many days it may lie in the sun.",
                    Citations.MEMBRANE));
        } else if (input.usedD() > limit) {
            said.add(Notice.advice(
                    "sun-days-used-up",
                    "usedD",
                    String.format(
                            Locale.ROOT,
                            "The membrane has had %.0f of %.0f days in the sun. Its maker says whether it stays or is"
                                    + " covered with a new one.",
                            input.usedD(),
                            limit),
                    Citations.MEMBRANE));
        }
        return List.copyOf(said);
    }
}
