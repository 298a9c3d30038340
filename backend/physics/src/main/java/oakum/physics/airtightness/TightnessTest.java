package oakum.physics.airtightness;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.calculation.Violation;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.PlacePressure;
import org.jspecify.annotations.Nullable;

/** The fan-pressurisation test of a house, in one or both directions, against its target. */
public final class TightnessTest {
    static final Source E779 =
            Source.fromMemory("ASTM E779, Standard Test Method for Determining Air Leakage Rate by Fan Pressurization");
    static final Source ISO = Source.fromMemory("ISO 9972:2015, Determination of air permeability of buildings");
    static final Source CGSB = Source.fromMemory("CAN/CGSB-149.10, Determination of the airtightness of buildings");
    static final Source PRACTICE = Source.commonPractice("tightness testing of houses");

    static final String PRACTICE_LIMIT = "wider than any house test; common practice, no published source";
    static final String WEATHER_LIMIT = "extremes of weather on earth";
    static final String EXPONENT_LIMIT = "0.5 is an opening, 1 a fine crack: theory of flow through leaks";

    /** Pressures at which the fitted curve is printed, Pa. */
    private static final double[] CURVE_PA = {4, 6, 8, 10, 15, 20, 25, 30, 40, 50, 60, 75};

    private static final double USUAL_EXPONENT = 0.65;
    private static final double LEAST_SPREAD = 1.2;
    private static final double WIDEST_LOG_INTERVAL = 5;
    private static final double WILDEST_EXPONENT = 5;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "tightness-test", "1.0", "Tightness test", Input.class, Output.class)
            .purpose("Turns the pressure and flow readings of a fan test into the house's leakage, with its uncertainty"
                    + " and what speaks against the test.")
            .equation("Δp = P − (P01 + P02)/2, then its size", E779)
            .equation("E779: ρ = 1.2041·(1 − 0.0065·Z/293)^5.2553·293/(t + 273)", E779)
            .equation(
                    "ISO 9972: ρ = (p − 0.37802·pv)/(287.055·T), pv = φ·exp(59.484085 − 6790.4985/T − 5.02802·ln T)",
                    ISO)
            .equation("depressurised Q = Qf·ρin/ρout; pressurised Q = Qf·ρout/ρin", E779)
            .equation("ln Q = ln C + n·ln Δp by least squares; weighted: each point weighs Q²", CGSB)
            .equation("95 %: t(0.975, N − 2)·s·√(1/N + (ln Δp − mean)²/Sxx) in ln Q", E779)
            .equation("E779: C0 = C·(μ/μ0)^(2n − 1)·(ρ/ρ0)^(1 − n), of the air in the leaks", E779)
            .equation("ISO 9972: CL = C·(ρ/ρ0)^(1 − n)", ISO)
            .equation("μ = 1.458e-6·T^1.5/(T + 110.4)", Source.fromMemory("Sutherland's formula"))
            .equation("Q50 = C0·50^n; ACH50 = Q50/V; q50 = Q50/A", E779)
            .equation("ELA4 = C0·4^(n − 0.5)·√(ρ0/2)", E779)
            .equation("EqLA10 = Q10/0.611·√(ρ0/20)", CGSB)
            .equation("uncertainty: u² = fit² + uQ² + (n·uΔp)²", ISO)
            .equation("single point: Q = Q50·(Δp/50)^n with n assumed", PRACTICE)
            .source(E779)
            .source(ISO)
            .source(CGSB)
            .caution(new Caution(
                    "Combustion",
                    "Before the fan runs, put out and switch off everything that burns, and see that fire and ash are"
                            + " cold. A tight house is easily pulled into depressurisation by its own exhaust fans: an"
                            + " appliance that takes air from the rooms may spill carbon monoxide. Local codes and a"
                            + " licensed trade decide; working carbon monoxide alarms are needed in any case."))
            .validation(
                    "A constructed test with both directions, solved by two independent codes, and an exact power law."
                            + " No published data set with printed answers was found; the standards' formulas are from memory.")
            .by(TightnessTest::compute);

    private TightnessTest() {}

    /** Whose form the test follows. */
    public enum Standard implements Labelled {
        E779("ASTM E779", TightnessTest.E779),
        ISO_9972("ISO 9972", ISO),
        SINGLE_POINT("single point, exponent assumed", PRACTICE);

        private final String label;
        private final Source source;

        Standard(String label, Source source) {
            this.label = label;
            this.source = source;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return source.printed();
        }
    }

    /** How the line is laid through the readings. */
    public enum Fit implements Labelled {
        ORDINARY("every reading counts the same", TightnessTest.E779),
        WEIGHTED("each reading weighs as its flow squared", CGSB);

        private final String label;
        private final Source source;

        Fit(String label, Source source) {
            this.label = label;
            this.source = source;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return source.printed();
        }
    }

    /** The volume on which a target is counted. */
    public enum VolumeBasis implements Labelled {
        NET("net air volume"),
        WITH_FLOORS("volume with floor depth");

        private final String label;

        VolumeBasis(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** One pressure step. */
    public record Reading(
            @Quantity(
                    label = "House pressure",
                    symbol = "P",
                    unit = Unit.HOUSE_PASCAL,
                    min = -200,
                    max = 200,
                    limitSource = PRACTICE_LIMIT,
                    help =
                            "Indoors less outdoors as read: negative in depressurisation. The baseline is taken off here.")
            double pressurePa,

            @Quantity(
                    label = "Fan flow",
                    symbol = "Qf",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 25,
                    limitSource = PRACTICE_LIMIT,
                    help = "Actual flow at the air the fan moves, after the fan's own density correction.")
            double airflowM3PerS) {}

    /** The readings of one direction. */
    public record Direction(
            @Quantity(
                    label = "Baseline before",
                    symbol = "P01",
                    unit = Unit.HOUSE_PASCAL,
                    min = -50,
                    max = 50,
                    limitSource = PRACTICE_LIMIT,
                    help = "House pressure with the fan covered, mean of a minute before the steps.")
            double baselineBeforePa,

            @Quantity(
                    label = "Baseline after",
                    symbol = "P02",
                    unit = Unit.HOUSE_PASCAL,
                    min = -50,
                    max = 50,
                    limitSource = PRACTICE_LIMIT,
                    help = "The same after the steps.")
            double baselineAfterPa,

            @Entry(
                    label = "Readings",
                    help = "One row a pressure step; 7 to 10 steps from 60 down to 15 Pa are usual.",
                    minRows = 1,
                    maxRows = 50)
            List<Reading> readings) {

        double baselinePa() {
            return (baselineBeforePa + baselineAfterPa) / 2;
        }

        /** The greater of the two baselines in size. */
        double greatestBaselinePa() {
            return Math.max(Math.abs(baselineBeforePa), Math.abs(baselineAfterPa));
        }
    }

    /** A test as it was run. */
    public record Input(
            @Entry(label = "Form of the test") Standard standard,

            @Entry(label = "Fit", help = "Which one was used is printed with the result.")
            Fit fit,

            @Entry(label = "Depressurisation", help = "The fan blows out. Leave out a direction that was not run.")
            @Nullable
            Direction depressurisation,

            @Entry(label = "Pressurisation", help = "The fan blows in.") @Nullable
            Direction pressurisation,

            @Quantity(
                    label = "Indoor temperature",
                    symbol = "ti",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = WEATHER_LIMIT)
            double indoorTemperatureC,

            @Quantity(
                    label = "Outdoor temperature",
                    symbol = "te",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 60,
                    limitSource = WEATHER_LIMIT)
            double outdoorTemperatureC,

            @Quantity(
                    label = "Indoor relative humidity",
                    symbol = "φi",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "definition",
                    help = "ISO 9972 only. Left out: taken as dry.")
            @Nullable
            Double indoorRelativeHumidityFraction,

            @Quantity(
                    label = "Outdoor relative humidity",
                    symbol = "φe",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "definition",
                    help = "ISO 9972 only. Left out: taken as dry.")
            @Nullable
            Double outdoorRelativeHumidityFraction,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = -430,
                    max = 5500,
                    limitSource = "lowest shore and highest settlements on earth",
                    help = "Fill in this or the air pressure.")
            @Nullable
            Double altitudeM,

            @Quantity(
                    label = "Air pressure",
                    symbol = "p",
                    unit = Unit.AIR_PASCAL,
                    min = 45_000,
                    max = 110_000,
                    limitSource = "weather on earth from the lowest shore to the highest settlements",
                    help = "As a barometer on the spot shows it, not reduced to sea level.")
            @Nullable
            Double pressurePa,

            @Quantity(
                    label = "Wind speed",
                    symbol = "U",
                    unit = Unit.METRE_PER_SECOND,
                    min = 0,
                    max = 60,
                    limitSource = WEATHER_LIMIT,
                    help = "Where it was measured or read from a station.")
            @Nullable
            Double windMPerS,

            @Quantity(
                    label = "Height of the envelope",
                    symbol = "H",
                    unit = Unit.METRE,
                    min = 0,
                    minExclusive = true,
                    max = 100,
                    limitSource = PRACTICE_LIMIT,
                    help =
                            "From the lowest to the highest leak; with the temperatures it tells how far stack disturbs.")
            @Nullable
            Double heightM,

            @Quantity(
                    label = "Net air volume",
                    symbol = "V",
                    unit = Unit.CUBIC_METRE,
                    min = 5,
                    max = 100_000,
                    limitSource = PRACTICE_LIMIT,
                    help = "Room by room, without floors and partitions.")
            double netVolumeM3,

            @Quantity(
                    label = "Volume with floor depth",
                    symbol = "Vf",
                    unit = Unit.CUBIC_METRE,
                    min = 5,
                    max = 100_000,
                    limitSource = PRACTICE_LIMIT)
            @Nullable
            Double floorsVolumeM3,

            @Quantity(
                    label = "Envelope area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 5,
                    max = 100_000,
                    limitSource = PRACTICE_LIMIT,
                    help = "Walls, roof and floor around the tested volume, below ground too.")
            @Nullable
            Double envelopeAreaM2,

            @Quantity(
                    label = "Target",
                    symbol = "ACH50",
                    unit = Unit.PER_HOUR,
                    min = 0,
                    minExclusive = true,
                    max = 50,
                    limitSource = PRACTICE_LIMIT)
            @Nullable
            Double targetAch50PerH,

            @Entry(label = "The target counts on", help = "The denominator decides: state it with the target.")
            @Nullable
            VolumeBasis targetVolume,

            @Quantity(
                    label = "Accuracy of the flow",
                    symbol = "uQ",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 0.5,
                    limitSource = PRACTICE_LIMIT,
                    help = "Of the reading, as the fan's calibration states it; 5 % is usual.")
            @Nullable
            Double flowAccuracyFraction,

            @Quantity(
                    label = "Accuracy of the pressure",
                    symbol = "uΔp",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 0.5,
                    limitSource = PRACTICE_LIMIT,
                    help = "Of the reading, as the gauge's calibration states it; 1 % is usual.")
            @Nullable
            Double pressureAccuracyFraction,

            @Quantity(
                    label = "Exponent assumed",
                    symbol = "n",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 1,
                    limitSource = EXPONENT_LIMIT,
                    help = "Single point only. Left out: 0.65.")
            @Nullable
            Double assumedExponent,

            @Entry(
                    label = "Something that burns takes its air from the rooms",
                    help = "A fireplace, stove, boiler, furnace or water heater that is not sealed from the rooms.")
            boolean roomAirAppliance) {}

    /** One reading, corrected. */
    public record Point(
            @Quantity(label = "Induced pressure", symbol = "Δp", unit = Unit.HOUSE_PASCAL, step = 0.1)
            double inducedPressurePa,

            @Quantity(
                    label = "Flow through the envelope",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-5)
            double airflowM3PerS,

            @Quantity(
                    label = "The same at standard conditions",
                    symbol = "Q0",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-5)
            double standardAirflowM3PerS,

            @Quantity(label = "Off the fitted line", unit = Unit.FRACTION, step = 0.001)
            double deviationFraction) {}

    /** One point of the fitted curve at standard conditions. */
    public record CurvePoint(
            @Quantity(label = "Pressure", symbol = "Δp", unit = Unit.HOUSE_PASCAL)
            double pressurePa,

            @Quantity(label = "Flow", symbol = "Q0", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
            double airflowM3PerS,

            @Quantity(label = "Lower 95 % limit", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5) @Nullable
            Double lowAirflowM3PerS,

            @Quantity(label = "Upper 95 % limit", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5) @Nullable
            Double highAirflowM3PerS) {}

    /** What one direction gives. Intervals are 95 % and absent for a single point. */
    public record DirectionResult(
            @Quantity(label = "Baseline", unit = Unit.HOUSE_PASCAL, step = 0.1)
            double baselinePa,

            @Quantity(label = "Indoor air density", symbol = "ρin", unit = Unit.KILOGRAM_PER_CUBIC_METRE, step = 1e-4)
            double indoorDensityKgPerM3,

            @Quantity(label = "Outdoor air density", symbol = "ρout", unit = Unit.KILOGRAM_PER_CUBIC_METRE, step = 1e-4)
            double outdoorDensityKgPerM3,

            @Quantity(label = "Exponent", symbol = "n", unit = Unit.ONE, step = 0.001)
            double exponent,

            @Quantity(label = "Exponent, ±", unit = Unit.ONE, step = 0.001) @Nullable
            Double exponentInterval,

            @Quantity(label = "Coefficient as tested", symbol = "C", unit = Unit.FLOW_COEFFICIENT, step = 1e-6)
            double coefficientM3PerSPaN,

            @Quantity(label = "Coefficient, lower limit", unit = Unit.FLOW_COEFFICIENT, step = 1e-6) @Nullable
            Double lowCoefficientM3PerSPaN,

            @Quantity(label = "Coefficient, upper limit", unit = Unit.FLOW_COEFFICIENT, step = 1e-6) @Nullable
            Double highCoefficientM3PerSPaN,

            @Quantity(
                    label = "Coefficient at standard conditions",
                    symbol = "C0",
                    unit = Unit.FLOW_COEFFICIENT,
                    step = 1e-6,
                    help = "CL in ISO 9972.")
            double standardCoefficientM3PerSPaN,

            @Quantity(label = "Fit", symbol = "r²", unit = Unit.ONE, step = 1e-4) @Nullable
            Double rSquared,

            @Quantity(label = "Flow at 50 Pa", symbol = "Q50", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double airflow50M3PerS,

            @Quantity(label = "Flow at 50 Pa, ± of the fit", unit = Unit.FRACTION, step = 1e-4) @Nullable
            Double airflow50FitFraction,

            @Quantity(label = "Flow at 50 Pa, ± with instruments", unit = Unit.FRACTION, step = 1e-4)
            double airflow50UncertaintyFraction,

            @Quantity(label = "Flow at 75 Pa", symbol = "Q75", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double airflow75M3PerS,

            @Quantity(label = "ACH50, net volume", symbol = "n50", unit = Unit.PER_HOUR, step = 0.01)
            double ach50NetPerH,

            @Quantity(label = "Leakage area at 4 Pa", symbol = "ELA4", unit = Unit.SMALL_SQUARE_METRE, step = 1e-5)
            double leakageArea4M2,

            @Quantity(label = "Leakage area at 4 Pa, ± of the fit", unit = Unit.FRACTION, step = 1e-4) @Nullable
            Double leakageArea4FitFraction,

            @Quantity(
                    label = "Equivalent area at 10 Pa",
                    symbol = "EqLA10",
                    unit = Unit.SMALL_SQUARE_METRE,
                    step = 1e-5)
            double equivalentArea10M2,

            @Entry(label = "Corrected readings") List<Point> points,

            @Entry(label = "Fitted curve") List<CurvePoint> curve) {}

    /** The house's leakage: the mean of the directions that were run. */
    public record Output(
            @Quantity(
                    label = "Flow at 50 Pa",
                    symbol = "Q50",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    step = 1e-4,
                    leading = true)
            double airflow50M3PerS,

            @Quantity(label = "Flow at 50 Pa, ±", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
            double airflow50UncertaintyM3PerS,

            @Quantity(label = "Flow at 75 Pa", symbol = "Q75", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-4)
            double airflow75M3PerS,

            @Quantity(label = "ACH50, net volume", symbol = "n50", unit = Unit.PER_HOUR, step = 0.01, leading = true)
            double ach50NetPerH,

            @Quantity(label = "ACH50, volume with floor depth", unit = Unit.PER_HOUR, step = 0.01) @Nullable
            Double ach50FloorsPerH,

            @Quantity(label = "Flow at 50 Pa per envelope area", symbol = "q50", unit = Unit.FLOW_PER_AREA, step = 1e-6)
            @Nullable
            Double airflow50PerAreaM3PerSM2,

            @Quantity(
                    label = "ACH50 compared with the target",
                    unit = Unit.PER_HOUR,
                    step = 0.01,
                    leading = true,
                    limitField = "targetAch50PerH")
            @Nullable
            Double comparedAch50PerH,

            @Quantity(label = "Compared ACH50, ±", unit = Unit.PER_HOUR, step = 0.001) @Nullable
            Double comparedAch50UncertaintyPerH,

            @Entry(label = "Against the target") @Nullable Verdict verdict,

            @Quantity(label = "Exponent", symbol = "n", unit = Unit.ONE, step = 0.001, leading = true)
            double exponent,

            @Quantity(
                    label = "Coefficient at standard conditions",
                    symbol = "C0",
                    unit = Unit.FLOW_COEFFICIENT,
                    step = 1e-6,
                    help = "With the exponent it gives the mean flow at 50 Pa.")
            double standardCoefficientM3PerSPaN,

            @Quantity(
                    label = "Leakage area at 4 Pa",
                    symbol = "ELA4",
                    unit = Unit.SMALL_SQUARE_METRE,
                    step = 1e-5,
                    leading = true)
            double leakageArea4M2,

            @Quantity(
                    label = "Equivalent area at 10 Pa",
                    symbol = "EqLA10",
                    unit = Unit.SMALL_SQUARE_METRE,
                    step = 1e-5)
            double equivalentArea10M2,

            @Quantity(
                    label = "As big as a square hole of side",
                    unit = Unit.SMALL_METRE,
                    step = 0.001,
                    help = "All leaks gathered in one sharp-edged hole, at 10 Pa.")
            double squareHoleSideM,

            @Quantity(label = "As big as a round hole across", unit = Unit.SMALL_METRE, step = 0.001)
            double roundHoleDiameterM,

            @Entry(label = "Depressurised") @Nullable DirectionResult depressurised,

            @Entry(label = "Pressurised") @Nullable DirectionResult pressurised,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        Densities air = Densities.of(in);
        List<DirectionResult> results = new ArrayList<>();
        DirectionResult out = null;
        DirectionResult inward = null;
        if (in.depressurisation() != null) {
            out = direction(in, air, in.depressurisation(), true);
            results.add(out);
        }
        if (in.pressurisation() != null) {
            inward = direction(in, air, in.pressurisation(), false);
            results.add(inward);
        }
        if (results.isEmpty()) {
            throw Refused.of("depressurisation", "", "Give the readings of at least one direction.", E779);
        }
        VolumeBasis basis = targetBasis(in);
        double airflow50 = mean(results.stream().mapToDouble(DirectionResult::airflow50M3PerS));
        double airflow50Uncertainty = uncertaintyOfMean(in, results);
        double exponent = mean(results.stream().mapToDouble(DirectionResult::exponent));
        double equivalentArea = mean(results.stream().mapToDouble(DirectionResult::equivalentArea10M2));
        double netAch = 3600 * airflow50 / in.netVolumeM3();
        Double floorsVolume = in.floorsVolumeM3();
        Double envelope = in.envelopeAreaM2();
        Double compared = null;
        Double comparedUncertainty = null;
        Verdict verdict = null;
        List<Notice> notices = TestQuality.findings(in, out, inward);
        Double target = in.targetAch50PerH();
        if (target != null) {
            double volume = basis == VolumeBasis.WITH_FLOORS && floorsVolume != null ? floorsVolume : in.netVolumeM3();
            compared = 3600 * airflow50 / volume;
            comparedUncertainty = 3600 * airflow50Uncertainty / volume;
            if (notices.stream().noneMatch(n -> n.weight() == Notice.Weight.REJECTED)) {
                verdict = Verdict.atMost(compared, comparedUncertainty, target);
            }
        }
        return new Output(
                airflow50,
                airflow50Uncertainty,
                mean(results.stream().mapToDouble(DirectionResult::airflow75M3PerS)),
                netAch,
                floorsVolume == null ? null : 3600 * airflow50 / floorsVolume,
                envelope == null ? null : airflow50 / envelope,
                compared,
                comparedUncertainty,
                verdict,
                exponent,
                PowerLaw.ofAirflow50(airflow50, exponent).coefficientM3PerSPaN(),
                mean(results.stream().mapToDouble(DirectionResult::leakageArea4M2)),
                equivalentArea,
                Math.sqrt(equivalentArea),
                Math.sqrt(4 * equivalentArea / Math.PI),
                out,
                inward,
                notices);
    }

    private static double mean(DoubleStream values) {
        return values.average().orElseThrow();
    }

    private static @Nullable VolumeBasis targetBasis(Input in) {
        if (in.targetAch50PerH() == null) {
            return null;
        }
        if (in.targetVolume() == null) {
            throw Refused.of("targetVolume", "", "Say on which volume the target counts.", PRACTICE);
        }
        if (in.targetVolume() == VolumeBasis.WITH_FLOORS && in.floorsVolumeM3() == null) {
            throw Refused.of(
                    "floorsVolumeM3", "", "The target counts on the volume with floor depth: give it.", PRACTICE);
        }
        return in.targetVolume();
    }

    /**
     * The fits of the two directions are independent of each other; the instruments are the same in both, so that their
     * part does not shrink with the mean.
     */
    private static double uncertaintyOfMean(Input in, List<DirectionResult> results) {
        double fitSquares = 0;
        double instruments = 0;
        for (DirectionResult result : results) {
            Double fit = result.airflow50FitFraction();
            double ofFit = fit == null ? 0 : result.airflow50M3PerS() * fit;
            fitSquares += ofFit * ofFit;
            instruments += result.airflow50M3PerS() * instrumentFraction(in, result.exponent());
        }
        return Math.hypot(Math.sqrt(fitSquares), instruments) / results.size();
    }

    private static double instrumentFraction(Input in, double exponent) {
        double flow = in.flowAccuracyFraction() == null ? 0 : in.flowAccuracyFraction();
        double pressure = in.pressureAccuracyFraction() == null ? 0 : in.pressureAccuracyFraction();
        return Math.hypot(flow, exponent * pressure);
    }

    private static DirectionResult direction(Input in, Densities air, Direction direction, boolean outward) {
        double[] pressure = inducedPressures(direction, outward);
        double[] airflow = new double[pressure.length];
        double toEnvelope = outward ? air.indoor() / air.outdoor() : air.outdoor() / air.indoor();
        for (int i = 0; i < airflow.length; i++) {
            airflow[i] = direction.readings().get(i).airflowM3PerS() * toEnvelope;
        }
        PowerLawFit fit = in.standard() == Standard.SINGLE_POINT ? null : fit(in, pressure, airflow, outward);
        PowerLaw tested = fit == null ? assumed(in, pressure, airflow) : fit.law();
        double leakDensity = outward ? air.outdoor() : air.indoor();
        double leakTemperature = outward ? in.outdoorTemperatureC() : in.indoorTemperatureC();
        PowerLaw law = atStandardConditions(in.standard(), tested, leakDensity, leakTemperature);
        double toStandard = law.coefficientM3PerSPaN() / tested.coefficientM3PerSPaN();

        List<Point> points = new ArrayList<>();
        for (int i = 0; i < airflow.length; i++) {
            points.add(new Point(
                    pressure[i],
                    airflow[i],
                    airflow[i] * toStandard,
                    airflow[i] / tested.airflowM3PerS(pressure[i]) - 1));
        }
        List<CurvePoint> curve = new ArrayList<>();
        for (double at : CURVE_PA) {
            double q = law.airflowM3PerS(at);
            Double factor = fit == null ? null : Math.exp(fit.logAirflowInterval(at));
            curve.add(new CurvePoint(at, q, factor == null ? null : q / factor, factor == null ? null : q * factor));
        }
        Double fit50 = fit == null ? null : Math.expm1(fit.logAirflowInterval(50));
        Double coefficientFactor = fit == null ? null : Math.exp(fit.logCoefficientInterval());
        double c = tested.coefficientM3PerSPaN();
        return new DirectionResult(
                direction.baselinePa(),
                air.indoor(),
                air.outdoor(),
                law.exponent(),
                fit == null ? null : fit.exponentInterval(),
                c,
                coefficientFactor == null ? null : c / coefficientFactor,
                coefficientFactor == null ? null : c * coefficientFactor,
                law.coefficientM3PerSPaN(),
                fit == null ? null : fit.squaredCorrelation(),
                law.airflowM3PerS(50),
                fit50,
                Math.hypot(fit50 == null ? 0 : fit50, instrumentFraction(in, law.exponent())),
                law.airflowM3PerS(75),
                3600 * law.airflowM3PerS(50) / in.netVolumeM3(),
                law.effectiveLeakageAreaM2(),
                fit == null ? null : Math.expm1(fit.logAirflowInterval(4)),
                law.equivalentLeakageAreaM2(),
                List.copyOf(points),
                List.copyOf(curve));
    }

    /** The law that the same leaks would follow in air of 20 °C at sea level, from the air that flowed through them. */
    static PowerLaw atStandardConditions(
            Standard standard, PowerLaw tested, double leakDensityKgPerM3, double leakTemperatureC) {
        double n = tested.exponent();
        double viscosity = standard == Standard.ISO_9972
                ? 1
                : Math.pow(MoistAir.viscosityPaS(leakTemperatureC) / TestAir.REFERENCE_VISCOSITY_PA_S, 2 * n - 1);
        double density = Math.pow(leakDensityKgPerM3 / PowerLaw.REFERENCE_DENSITY_KG_PER_M3, 1 - n);
        return new PowerLaw(tested.coefficientM3PerSPaN() * viscosity * density, n);
    }

    private static double[] inducedPressures(Direction direction, boolean outward) {
        List<Violation> wrong = new ArrayList<>();
        double[] induced = new double[direction.readings().size()];
        for (int i = 0; i < induced.length; i++) {
            double read = direction.readings().get(i).pressurePa();
            induced[i] = (outward ? -1 : 1) * (read - direction.baselinePa());
            if (!(induced[i] > 0)) {
                wrong.add(Violation.of(
                        name(outward) + ".readings[" + i + "].pressurePa",
                        Canonical.text(read),
                        (outward
                                        ? "With the fan blowing out the house lies below outdoors: "
                                        : "With the fan blowing in the house lies above outdoors: ")
                                + "house pressure less baseline must be "
                                + (outward ? "negative" : "positive") + ", and is "
                                + Canonical.text(Canonical.toStep(read - direction.baselinePa(), 0.01)) + " Pa.",
                        E779.printed()));
            }
        }
        if (!wrong.isEmpty()) {
            throw new Refused(wrong);
        }
        return induced;
    }

    static String name(boolean outward) {
        return outward ? "depressurisation" : "pressurisation";
    }

    private static PowerLawFit fit(Input in, double[] pressure, double[] airflow, boolean outward) {
        String field = name(outward) + ".readings";
        double lowest = Arrays.stream(pressure).min().orElseThrow();
        double highest = Arrays.stream(pressure).max().orElseThrow();
        if (pressure.length < 3 || highest < LEAST_SPREAD * lowest) {
            throw Refused.of(
                    field,
                    Integer.toString(pressure.length),
                    "A line with an interval needs at least three readings, the highest pressure at least 1.2 times the"
                            + " lowest. For readings near one pressure choose the single point form.",
                    PRACTICE);
        }
        PowerLawFit fit = PowerLawFit.of(pressure, airflow, in.fit() == Fit.WEIGHTED);
        double exponent = fit.line().slope();
        if (!(fit.logCoefficientInterval() < WIDEST_LOG_INTERVAL && Math.abs(exponent) < WILDEST_EXPONENT)) {
            throw Refused.of(
                    field,
                    Integer.toString(pressure.length),
                    "No line through these readings means anything: the exponent would be "
                            + Canonical.text(Canonical.toStep(exponent, 0.01)) + " ± "
                            + Canonical.text(Canonical.toStep(fit.exponentInterval(), 0.01))
                            + ". Look for a reading typed wrongly.",
                    PRACTICE);
        }
        return fit;
    }

    private static PowerLaw assumed(Input in, double[] pressure, double[] airflow) {
        double n = in.assumedExponent() == null ? USUAL_EXPONENT : in.assumedExponent();
        double sum = 0;
        for (int i = 0; i < pressure.length; i++) {
            sum += Math.log(airflow[i]) - n * Math.log(pressure[i]);
        }
        return new PowerLaw(Math.exp(sum / pressure.length), n);
    }

    private record Densities(double indoor, double outdoor) {
        static Densities of(Input in) {
            double pressure = PlacePressure.pressurePa(in.pressurePa(), in.altitudeM());
            double indoor = in.indoorTemperatureC();
            double outdoor = in.outdoorTemperatureC();
            if (in.standard() == Standard.ISO_9972) {
                return new Densities(
                        TestAir.moistDensityKgPerM3(indoor, orDry(in.indoorRelativeHumidityFraction()), pressure),
                        TestAir.moistDensityKgPerM3(outdoor, orDry(in.outdoorRelativeHumidityFraction()), pressure));
            }
            Double altitude = in.altitudeM();
            return altitude == null
                    ? new Densities(
                            TestAir.densityAtPressureKgPerM3(indoor, pressure),
                            TestAir.densityAtPressureKgPerM3(outdoor, pressure))
                    : new Densities(
                            TestAir.densityAtAltitudeKgPerM3(indoor, altitude),
                            TestAir.densityAtAltitudeKgPerM3(outdoor, altitude));
        }

        private static double orDry(@Nullable Double relativeHumidity) {
            return relativeHumidity == null ? 0 : relativeHumidity;
        }
    }
}
