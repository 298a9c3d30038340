package oakum.physics.wood;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** What the boards of a floor do between two humidities. */
public final class FloorMovement {
    private static final double LEAST_COVERED_FRACTION = 0.06;
    private static final double MOST_COVERED_FRACTION = 0.14;
    private static final int BAND_STEPS = 8;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "floor-movement", "1.0", "Floor boards: gaps and cup", Input.class, Result.class)
            .purpose("Estimates the gap or the squeeze of each floor board between the day it was laid and another"
                    + " humidity, and how far a free board cups.")
            .equation(
                    "M = 1800/W · (K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)) %",
                    Citations.EQUILIBRIUM)
            .equation(
                    "ΔD = D C (M2 − M1), C along the width: tangential flat-sawn, radial quarter-sawn",
                    Citations.MOVEMENT)
            .equation("faces that differ by ΔM: depth = C ΔM b²/(8 t)", Citations.CUP)
            .equation("flat-sawn, drying by ΔM evenly: depth = (Ct − Cr) ΔM b²/(4 r)", Citations.CUP)
            .source(Citations.EQUILIBRIUM)
            .source(Citations.PRACTICAL)
            .source(Citations.MOVEMENT)
            .source(Citations.ESTIMATED)
            .source(Citations.SHARING)
            .validation("The example of a trade guide for floors comes back; widths and cups computed a second time by"
                    + " independent code.")
            .by(FloorMovement::compute);

    private FloorMovement() {}

    /** A floor and two conditions. */
    public record Input(
            @Entry(label = "Species") WoodSpecies species,

            @Entry(label = "Cut") BoardCut cut,

            @Quantity(
                    label = "Change of width per % of moisture, where known better",
                    symbol = "C",
                    unit = Unit.ONE,
                    min = 0.0001,
                    max = 0.01,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Leave out to take that of the species.")
            @Nullable
            Double changePerPercent,

            @Quantity(
                    label = "Board width",
                    symbol = "D, b",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 0.6,
                    limitSource = Citations.PLAUSIBLE)
            double widthM,

            @Quantity(
                    label = "Board thickness",
                    symbol = "t",
                    unit = Unit.SMALL_METRE,
                    min = 0.003,
                    max = 0.1,
                    limitSource = Citations.PLAUSIBLE)
            double thicknessM,

            @Quantity(
                    label = "Floor across the boards",
                    unit = Unit.METRE,
                    min = 0.01,
                    max = 100,
                    limitSource = Citations.PLAUSIBLE)
            double acrossM,

            @Quantity(
                    label = "Temperature of the boards",
                    symbol = "T",
                    unit = Unit.CELSIUS,
                    min = 0,
                    max = 50,
                    limitSource = Citations.PLAUSIBLE)
            double temperatureC,

            @Entry(label = "When laid") WoodCondition laid,

            @Entry(label = "Later") WoodCondition later,

            @Quantity(
                    label = "Moisture of the wetter face above that of the drier face",
                    symbol = "ΔM",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 0.2,
                    limitSource = Citations.PLAUSIBLE)
            double faceDifferenceFraction,

            @Quantity(
                    label = "From the middle of the board to the pith",
                    symbol = "r",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 1,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Read from the rings at the end of a flat-sawn board.")
            @Nullable
            Double toPithM) {}

    /** The floor at one humidity between the two. */
    public record BandStep(
            @Quantity(label = "Moisture", symbol = "M", unit = Unit.FRACTION, step = 0.0001)
            double moistureFraction,

            @Quantity(label = "Air that leaves it", symbol = "RH", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double relativeHumidityFraction,

            @Quantity(label = "Gap for each board", unit = Unit.SMALL_METRE, step = 1e-5)
            double gapM) {}

    /** What the floor does. */
    public record Result(
            @Quantity(label = "Moisture when laid", symbol = "M1", unit = Unit.FRACTION, step = 0.0001)
            double laidFraction,

            @Quantity(label = "Moisture later", symbol = "M2", unit = Unit.FRACTION, step = 0.0001)
            double laterFraction,

            @Quantity(
                    label = "Gap for each board",
                    symbol = "−ΔD",
                    unit = Unit.SMALL_METRE,
                    step = 1e-6,
                    leading = true,
                    help = "Negative where the boards swell and press.")
            double gapM,

            @Quantity(
                    label = "All boards together",
                    unit = Unit.SMALL_METRE,
                    step = 1e-4,
                    leading = true,
                    help = "Shared unevenly: one joint may open for several boards.")
            double sumM,

            @Quantity(label = "Change of width per % of moisture", symbol = "C", unit = Unit.ONE)
            double changePerPercent,

            @Quantity(label = "Cup from faces that differ, free board", unit = Unit.SMALL_METRE, step = 1e-6)
            double cupFromFacesM,

            @Quantity(
                    label = "Cup from the rings, free board",
                    unit = Unit.SMALL_METRE,
                    step = 1e-6,
                    help = "Positive where the edges lift on the side of the bark. Flat-sawn only.")
            @Nullable
            Double cupFromRingsM,

            @Entry(label = "Between the two") List<BandStep> band,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double laid = input.laid().moistureFraction("laid", input.temperatureC());
        double later = input.later().moistureFraction("later", input.temperatureC());
        double change = changePerPercent(input);
        double gap = gapM(input.widthM(), change, laid, later);
        return new Result(
                laid,
                later,
                gap,
                gap * input.acrossM() / input.widthM(),
                change,
                BoardMovement.cupFromFacesM(input.widthM(), input.thicknessM(), change, input.faceDifferenceFraction()),
                cupFromRingsM(input, change, laid - later),
                band(input, change, laid, later),
                notices(input, laid, later, gap));
    }

    private static double gapM(double widthM, double change, double laid, double later) {
        return -BoardMovement.widthChangeM(widthM, change, laid, later);
    }

    private static double changePerPercent(Input input) {
        Double own = input.changePerPercent();
        if (own != null) {
            return own;
        }
        Double listed = input.species().changePerPercent(input.cut());
        if (listed == null) {
            throw Refused.of(
                    "changePerPercent",
                    "",
                    "No coefficient for " + input.species().label() + ", "
                            + input.cut().label()
                            + ", is at hand. Give the change of width per % of moisture (0.001 to 0.004 is usual).",
                    Citations.MOVEMENT);
        }
        return listed;
    }

    private static @Nullable Double cupFromRingsM(Input input, double tangential, double dried) {
        Double toPith = input.toPithM();
        Double radial = input.species().changePerPercent(BoardCut.QUARTER_SAWN);
        if (toPith == null || radial == null || input.cut() != BoardCut.FLAT_SAWN) {
            return null;
        }
        return BoardMovement.cupFromRingsM(input.widthM(), tangential, radial, dried, toPith);
    }

    private static List<BandStep> band(Input input, double change, double laid, double later) {
        List<BandStep> band = new ArrayList<>();
        double wettest = WoodMoisture.equilibriumFraction(input.temperatureC(), 1);
        for (int i = 0; i <= BAND_STEPS; i++) {
            double moisture = laid + (later - laid) * i / BAND_STEPS;
            band.add(new BandStep(
                    moisture,
                    moisture > wettest
                            ? null
                            : (Double) WoodMoisture.relativeHumidityFraction(input.temperatureC(), moisture),
                    gapM(input.widthM(), change, laid, moisture)));
        }
        return List.copyOf(band);
    }

    private static List<Notice> notices(Input input, double laid, double later, double gap) {
        List<Notice> said = new ArrayList<>();
        said.add(Notice.note(
                "shared-unevenly",
                "sumM",
                "The number holds for one free board. Boards of a room share their movement unevenly, and species and"
                        + " history move equilibrium by 1 to 2 % of moisture: the sum is no promise.",
                Citations.SHARING));
        double least = Math.min(laid, later);
        double most = Math.max(laid, later);
        if (least < LEAST_COVERED_FRACTION || most > MOST_COVERED_FRACTION) {
            said.add(Notice.advice(
                    "movement-extrapolated",
                    least < LEAST_COVERED_FRACTION ? "laterFraction" : "laidFraction",
                    String.format(
                            Locale.ROOT,
                            "The coefficients hold from 6 to 14 %% of moisture; from %.1f to %.1f %% the line is drawn"
                                    + " on.",
                            100 * laid,
                            100 * later),
                    Citations.MOVEMENT));
        }
        if (input.changePerPercent() == null && input.species().isEstimated(input.cut())) {
            said.add(Notice.note(
                    "movement-estimated",
                    "changePerPercent",
                    "No coefficient is listed for " + input.species().label() + "; it is estimated from its shrinkage.",
                    Citations.ESTIMATED));
        }
        if (gap < 0) {
            said.add(Notice.advice(
                    "floor-swells",
                    "gapM",
                    String.format(
                            Locale.ROOT,
                            "The boards swell by %.1f mm over the floor. Without that room at the walls they press, lift"
                                    + " or buckle.",
                            -1000 * gap * input.acrossM() / input.widthM()),
                    Citations.MOVEMENT));
        }
        return List.copyOf(said);
    }
}
