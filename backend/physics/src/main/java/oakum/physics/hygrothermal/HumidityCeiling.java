package oakum.physics.hygrothermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Verdict;
import oakum.physics.material.Material;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/**
 * The highest indoor humidity, as a function of the temperature outdoors, at which a wall still passes. The shape is the
 * humidity at which the coldest board would see 80 % in steady state; the whole curve is raised or lowered until the
 * last year of a transient run just passes every limit. What the input says of the air inside is not used.
 */
public final class HumidityCeiling {
    private static final Source METHOD =
            Source.proposed("steady-state shape, scaled by bisection of transient runs until every limit just holds");
    private static final double[] OUTDOOR_C = {-30, -25, -20, -15, -10, -5, 0, 5, 10, 15};
    private static final double CRITICAL_FRACTION = 0.8;
    private static final double HIGHEST_FRACTION = 0.70;
    private static final double LOWEST_FRACTION = 0.05;
    private static final double LEAST_SCALE = 0.4;
    private static final double GREATEST_SCALE = 2.0;
    private static final int HALVINGS = 6;
    private static final double USUAL_INDOOR_C = 20;
    private static final double SURFACE_M2K_PER_W = 0.13;
    private static final double BOARD_CONDUCTIVITY_W_PER_M_K = 0.06;
    private static final int TEN_BELOW = 4;

    /** The declared calculation; eight runs of the wall, some tens of seconds. */
    public static final Calculation<WallMoistureInput, HumidityCeilingResult> CALCULATION = Calculation.declare(
                    "humidity-ceiling",
                    "1.0",
                    "Humidity that a wall stands",
                    WallMoistureInput.class,
                    HumidityCeilingResult.class)
            .purpose("Gives the indoor humidity over outdoor temperature up to which the wall passes every limit: the"
                    + " ceiling of set points and alerts.")
            .equation(
                    "φ_i = 0.8 p_sat(θ_plane)/p_sat(θ_i)",
                    Source.commonPractice("dew-point test of a plane, turned round"))
            .source(METHOD)
            .caution(new Caution(
                    "Mould",
                    "A ceiling that the wall stands says nothing of cold corners, glass edges and what stands against"
                            + " outside walls; those may call for a lower humidity."))
            .validation("The quick bound is the dew-point test of the reference sheet turned round; the scaling has no"
                    + " published example.")
            .by(input -> compute(input, RunControl.NONE));

    private HumidityCeiling() {}

    /**
     * Computes and tells how far it is, counted over all runs.
     *
     * @param control asked after each simulated day; when it says no, the best curve so far is answered
     */
    public static HumidityCeilingResult compute(WallMoistureInput input, RunControl control) {
        Limits.require(input);
        WallCase made = new WallCase(with(input, new double[] {0.4}, new double[] {0}));
        double indoorC = input.indoorC() == null ? USUAL_INDOOR_C : input.indoorC();
        double[] plane = new double[OUTDOOR_C.length];
        double[] quick = new double[OUTDOOR_C.length];
        double share = shareToPlane(made);
        for (int i = 0; i < quick.length; i++) {
            plane[i] = indoorC + share * (OUTDOOR_C[i] - indoorC);
            quick[i] = CRITICAL_FRACTION
                    * Iso13788Saturation.pressurePa(plane[i])
                    / Iso13788Saturation.pressurePa(indoorC);
        }
        Search search = new Search(input, quick, control);
        double scale = search.greatest();
        List<Notice> notices = new ArrayList<>(made.notices);
        if (search.stopped) {
            notices.add(Notice.advice("stopped", "", "The search was stopped; the curve may lie higher.", METHOD));
        }
        List<HumidityCeilingResult.Point> curve = new ArrayList<>();
        for (int i = 0; i < quick.length; i++) {
            curve.add(new HumidityCeilingResult.Point(
                    OUTDOOR_C[i], plane[i], quick[i], Double.isNaN(scale) ? null : scaled(quick[i], scale)));
        }
        Double tenBelow = curve.get(TEN_BELOW).ceilingFraction();
        return new HumidityCeilingResult(words(tenBelow), curve, tenBelow, search.runs, notices);
    }

    private static String words(@Nullable Double tenBelow) {
        return tenBelow == null
                ? "This wall fails even with a very dry room: not the room's humidity but the wall has to change."
                : String.format(
                        Locale.ROOT,
                        "At −10 °C outdoors this wall stands up to %.0f %% relative humidity inside.",
                        100 * tenBelow);
    }

    private static double scaled(double quick, double scale) {
        return Math.max(LOWEST_FRACTION, Math.min(HIGHEST_FRACTION, quick * scale));
    }

    /** Bisection on the scale of the curve. */
    private static final class Search {
        private final WallMoistureInput input;
        private final double[] quick;
        private final RunControl control;
        private int runs;
        private boolean stopped;

        Search(WallMoistureInput input, double[] quick, RunControl control) {
            this.input = input;
            this.quick = quick;
            this.control = control;
        }

        /** The greatest scale that passes, or NaN where none does. */
        double greatest() {
            if (!passes(LEAST_SCALE)) {
                return Double.NaN;
            }
            if (passes(GREATEST_SCALE)) {
                return GREATEST_SCALE;
            }
            double good = LEAST_SCALE;
            double bad = GREATEST_SCALE;
            for (int i = 0; i < HALVINGS && !stopped; i++) {
                double middle = 0.5 * (good + bad);
                if (passes(middle)) {
                    good = middle;
                } else {
                    bad = middle;
                }
            }
            return good;
        }

        private boolean passes(double scale) {
            if (stopped) {
                return false;
            }
            double[] curve = new double[quick.length];
            for (int i = 0; i < curve.length; i++) {
                curve[i] = scaled(quick[i], scale);
            }
            int before = runs;
            int most = HALVINGS + 2;
            WallMoisture.Run run = WallMoisture.run(with(input, curve, OUTDOOR_C), (done, hours) -> {
                boolean on = control.goOn(before * hours + done, most * hours);
                stopped |= !on;
                return on;
            });
            runs++;
            return !stopped && run.resultOrRefuse().verdict() == Verdict.PASSES;
        }
    }

    /** Of the way from the room's temperature to outdoors, how much is passed at the inner face of the coldest board. */
    private static double shareToPlane(WallCase made) {
        int board = -1;
        for (int l = 0; l < made.parts.size(); l++) {
            Material material = made.parts.get(l).material();
            if (made.parts.get(l).judged()
                    && made.parts.get(l).layer() instanceof SolidLayer
                    && material != null
                    && material.conductivityWPerMK() >= BOARD_CONDUCTIVITY_W_PER_M_K) {
                board = l;
            }
        }
        double before = SURFACE_M2K_PER_W;
        double all = 2 * SURFACE_M2K_PER_W;
        for (int l = 0; l < made.parts.size() && made.parts.get(l).judged(); l++) {
            double resistance = resistance(made.parts.get(l));
            all += resistance;
            if (l < board) {
                before += resistance;
            }
        }
        return before / all;
    }

    private static double resistance(WallCase.Part part) {
        Material material = part.material();
        if (part.layer() instanceof SolidLayer solid && material != null) {
            return solid.thicknessM() / material.conductivityWPerMK();
        }
        return part.layer() instanceof AirLayer air ? 2 / air.faceHeatWPerM2K() : 0;
    }

    private static WallMoistureInput with(WallMoistureInput in, double[] humidity, double[] outdoorC) {
        List<WallMoistureInput.CurvePoint> curve = new ArrayList<>();
        for (int i = 0; i < humidity.length; i++) {
            curve.add(new WallMoistureInput.CurvePoint(outdoorC[i], humidity[i]));
        }
        return new WallMoistureInput(
                in.layers(),
                in.cut(),
                in.azimuthDeg(),
                in.tiltDeg(),
                in.absorptanceFraction(),
                in.weatherHash(),
                IndoorKind.WINTER_CURVE,
                in.indoorC(),
                null,
                curve,
                in.rainSite(),
                in.rainDeposition(),
                in.rainEntryFraction(),
                in.rainLayerId(),
                in.leakTightness(),
                in.leakHeightM(),
                in.leakLayerId(),
                in.cavityAirChangesPerH(),
                in.startHumidityFraction(),
                in.wetStarts(),
                in.woodLimitFraction(),
                in.startMonth(),
                in.years());
    }
}
