package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Verdict;
import oakum.physics.filtration.FanCurve.OperatingPoint;
import oakum.physics.filtration.FilterSizing.Candidate;
import oakum.physics.filtration.FilterSizing.CoilAir;
import oakum.physics.filtration.FilterSizing.FanKind;
import oakum.physics.filtration.FilterSizing.FanPoint;
import oakum.physics.filtration.FilterSizing.House;
import oakum.physics.filtration.FilterSizing.Input;
import oakum.physics.filtration.FilterSizing.Option;
import oakum.physics.filtration.FilterSizing.RatedPoint;
import oakum.physics.filtration.FilterSizing.Rules;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import org.jspecify.annotations.Nullable;

/** One candidate, computed for one place; {@link FilterSizing} asks and ranks. */
final class SizedFilter {
    /** Passing ones first, then cleaner air to a tenth of a microgram, then lower drop, then the key. */
    static final Comparator<Option> BEST_FIRST = Comparator.comparingInt((Option o) -> order(o.verdict()))
            .thenComparingDouble(o -> Math.rint(10 * o.indoorUgPerM3()))
            .thenComparingDouble(Option::cleanHighPa)
            .thenComparing(Option::id);

    /** Density of standard air, at which fans and coils are rated, kg/m³. */
    private static final double STANDARD_DENSITY_KG_PER_M3 = 1.2041;

    /** A fan that falls this far short of the airflow wanted is worth a sentence. */
    private static final double WELL_BELOW = 0.95;

    private static final double HOURS_A_YEAR = 8760;

    private SizedFilter() {}

    /** What is the same for all candidates. */
    record Site(Input in, double density, FanCurve fan) {
        static Site of(Input in) {
            double density = MoistAir.dryAirDensityKgPerM3(in.airC(), StandardAtmosphere.pressurePa(in.altitudeM()));
            return new Site(in, density, fanAt(in, density / STANDARD_DENSITY_KG_PER_M3));
        }

        double budgetPa() {
            return FilterFace.staticBudgetPa(in.staticLimitPa(), in.otherStaticPa());
        }

        /** Everything but the filter, at a flow. */
        double otherPa(double flow) {
            return in.otherStaticPa() * (flow / in.highM3PerS()) * (flow / in.highM3PerS());
        }

        /** Standard air over the coil for its capacity. */
        @Nullable
        Double coilAirflow(double flow) {
            Double cooling = in.coolingW();
            return cooling == null ? null : flow * density / STANDARD_DENSITY_KG_PER_M3 / cooling;
        }
    }

    private static FanCurve fanAt(Input in, double densityRatio) {
        if (in.fanKind() == FanKind.CONSTANT_FLOW) {
            return new FanCurve.ConstantFlow(in.highM3PerS(), in.staticLimitPa());
        }
        List<FanPoint> table = in.fanTable();
        if (table.size() < 2) {
            throw FilterSizing.refused(
                    "fanTable", table.size(), "This kind of fan needs a table of two points or more.");
        }
        List<FanCurve.Point> points = new ArrayList<>();
        for (int i = 0; i < table.size(); i++) {
            FanPoint point = table.get(i);
            if (i > 0 && !(point.flowM3PerS() > table.get(i - 1).flowM3PerS())) {
                throw FilterSizing.refused(
                        "fanTable[" + i + "].flowM3PerS", point.flowM3PerS(), "The fan table needs rising airflows.");
            }
            points.add(new FanCurve.Point(point.flowM3PerS(), point.pressurePa() * densityRatio));
        }
        if (in.fanKind() == FanKind.TABLE) {
            return new FanCurve.Table(points);
        }
        FanCurve.ConstantTorque line = FanCurve.ConstantTorque.through(points);
        if (!(line.fall() > 0 && line.shutoff() > 0)) {
            throw FilterSizing.refused("fanTable", table.size(), "The fan's pressure must fall with its airflow.");
        }
        return line;
    }

    private static int order(Verdict verdict) {
        return switch (verdict) {
            case PASSES -> 0;
            case NOT_PROVEN -> 1;
            case FAILS -> 2;
        };
    }

    static Option of(Site site, int index, List<Notice> notices) {
        Input in = site.in();
        Rules rules = in.rules();
        Candidate c = in.candidates().get(index);
        CleanCurve curve = curve(in, index, notices);
        double area = c.filterCount() * c.widthM() * c.heightM();
        DoubleUnaryOperator clean = q -> curve.dropPa(q / area, site.density());

        double high = in.highM3PerS();
        double low = in.lowM3PerS();
        double face = high / area;
        double cleanHigh = clean.applyAsDouble(high);
        double cleanLow = clean.applyAsDouble(low);
        double budget = site.budgetPa();
        Double last = c.finalResistancePa();
        double loaded = Math.min(rules.changeLoad() * cleanHigh, last == null ? Double.POSITIVE_INFINITY : last);
        double changeAt = loaded / cleanHigh;

        Optional<OperatingPoint> cleanPoint = site.fan().against(q -> site.otherPa(q) + clean.applyAsDouble(q));
        Optional<OperatingPoint> loadedPoint =
                site.fan().against(q -> site.otherPa(q) + changeAt * clean.applyAsDouble(q));
        Double coil = loadedPoint.map(point -> site.coilAirflow(point.flow())).orElse(null);
        CoilAir coilAir = coilAir(coil, rules);

        Reasons reasons = new Reasons();
        reasons.limit("face", face, 0, rules.faceLimitMPerS(), "%.2f", "m/s");
        reasons.limit(
                "clean drop",
                cleanHigh,
                rules.curveToleranceFraction() * cleanHigh,
                rules.cleanLimitPa(),
                "%.1f",
                "Pa");
        reasons.limit(
                String.format(Locale.ROOT, "loaded drop (filter load %.2f)", changeAt),
                loaded,
                rules.curveToleranceFraction() * loaded,
                budget,
                "%.1f",
                "Pa of static");
        if (last != null && last <= cleanHigh) {
            reasons.fail("The clean filter already stands at the maker's final resistance.");
        }
        if (cleanPoint.isEmpty() || loadedPoint.isEmpty()) {
            reasons.fail("The fan table does not reach " + (cleanPoint.isEmpty() ? "the clean" : "the loaded")
                    + " filter's operating point.");
        }
        cleanPoint
                .filter(point -> point.flow() < WELL_BELOW * high)
                .ifPresent(point -> reasons.note(String.format(
                        Locale.ROOT,
                        "The fan gives only %.3f of %.3f m³/s with the clean filter.",
                        point.flow(),
                        high)));
        Double designCoil = site.coilAirflow(high);
        if (coilAir == CoilAir.BELOW_ALARM) {
            String sentence = "Air over the coil falls below the alarm once the filter is loaded.";
            if (designCoil != null && designCoil >= rules.coilAlarmM3PerSW()) {
                reasons.fail(sentence);
            } else {
                reasons.note(sentence);
            }
        } else if (coilAir == CoilAir.BELOW_ADVISED) {
            reasons.note("Air over the coil is below the advised least once the filter is loaded.");
        }

        double share = in.highShareFraction();
        double fanHigh = high * (site.otherPa(high) + cleanHigh) / in.fanFraction();
        double fanLow = low * (site.otherPa(low) + cleanLow) / in.fanFraction();
        double yearKWh = fanLow * HOURS_A_YEAR * (1 - share) / 1000;
        return new Option(
                c.id(),
                reasons.verdict,
                reasons.text(),
                face,
                high / (c.filterCount() * actualFaceM2(c, index)),
                media(c, high),
                cleanHigh,
                cleanLow,
                budget - cleanHigh,
                loaded,
                changeAt,
                budget / cleanHigh,
                cleanPoint.map(OperatingPoint::flow).orElse(null),
                cleanPoint.map(OperatingPoint::pressure).orElse(null),
                loadedPoint.map(OperatingPoint::flow).orElse(null),
                loadedPoint.map(OperatingPoint::pressure).orElse(null),
                coil,
                coilAir,
                particles(in.house(), share * high + (1 - share) * low, c.particleFraction()),
                particles(in.house(), share * high, c.particleFraction()),
                fanHigh,
                fanLow,
                yearKWh,
                yearKWh * in.electricityCostPerKWh());
    }

    /** The clean curve over nominal face velocity, from the two parts or from rated points. */
    private static CleanCurve curve(Input in, int index, List<Notice> notices) {
        Candidate c = in.candidates().get(index);
        String at = "candidates[" + index + "].";
        List<RatedPoint> points = in.ratedPoints().stream()
                .filter(point -> point.candidate().equals(c.id()))
                .toList();
        Double linear = c.linearPaSPerM();
        Double square = c.squarePaS2PerM2();
        if ((linear != null || square != null) == !points.isEmpty()) {
            throw FilterSizing.refused(
                    at + "linearPaSPerM",
                    c.id(),
                    "Give \"" + c.id() + "\" either both parts of its clean curve or rated points.");
        }
        if (points.isEmpty()) {
            if (linear == null || square == null || linear + square == 0) {
                throw FilterSizing.refused(
                        at + (linear == null ? "linearPaSPerM" : "squarePaS2PerM2"),
                        c.id(),
                        "The clean curve of \"" + c.id() + "\" needs both parts, one of them above 0.");
            }
            return new CleanCurve(linear, square);
        }
        double[] flow = points.stream().mapToDouble(RatedPoint::flowM3PerS).toArray();
        double[] drop = points.stream().mapToDouble(RatedPoint::dropPa).toArray();
        FilterCurve.requireTwoFlows("ratedPoints", flow);
        double most = 0;
        for (double q : flow) {
            most = Math.max(most, q);
        }
        if (in.highM3PerS() / c.filterCount() > most) {
            notices.add(Notice.advice(
                    "beyond-points",
                    at + "id",
                    "The high airflow lies beyond the rated points of \"" + c.id() + "\": its drop is a guess.",
                    FilterSizing.CURVE));
        }
        return FilterCurve.curve(flow, drop, c.widthM() * c.heightM());
    }

    private static double actualFaceM2(Candidate c, int index) {
        double width = actual(c.actualWidthM(), c.widthM());
        double height = actual(c.actualHeightM(), c.heightM());
        if (width > c.widthM() || height > c.heightM()) {
            throw FilterSizing.refused(
                    "candidates[" + index + "]." + (width > c.widthM() ? "actualWidthM" : "actualHeightM"),
                    c.id(),
                    "The actual size of \"" + c.id() + "\" is above its nominal size.");
        }
        return width * height;
    }

    private static double actual(@Nullable Double given, double nominal) {
        return given == null ? nominal - FilterFace.USUAL_UNDERSIZE_M : given;
    }

    private static @Nullable Double media(Candidate c, double flow) {
        Double depth = c.pleatDepthM();
        Double pitch = c.pleatPitchM();
        return depth == null || pitch == null
                ? null
                : flow / (c.filterCount() * FilterFace.mediaAreaM2(c.widthM(), c.heightM(), depth, pitch));
    }

    private static CoilAir coilAir(@Nullable Double airflow, Rules rules) {
        if (airflow == null) {
            return CoilAir.NOT_ASKED;
        }
        if (airflow < rules.coilAlarmM3PerSW()) {
            return CoilAir.BELOW_ALARM;
        }
        return airflow < rules.coilAdvisedM3PerSW() ? CoilAir.BELOW_ADVISED : CoilAir.ENOUGH;
    }

    private static double particles(House house, double recirculatedM3PerS, double filterFraction) {
        return new RoomParticles(
                        house.outdoorUgPerM3(),
                        house.volumeM3(),
                        house.infiltrationPerH(),
                        house.penetrationFraction(),
                        house.ventilationM3PerS() * 3600 / house.volumeM3(),
                        house.ventilationFilterFraction(),
                        house.depositionPerH(),
                        recirculatedM3PerS,
                        filterFraction,
                        house.emissionUgPerH())
                .steadyUgPerM3();
    }

    /** Gathers why a candidate passes or fails. */
    private static final class Reasons {
        private final List<String> sentences = new ArrayList<>();
        private Verdict verdict = Verdict.PASSES;

        void limit(String what, double value, double uncertainty, double limit, String format, String unit) {
            Verdict one = Verdict.atMost(value, uncertainty, limit);
            String outcome = switch (one) {
                case PASSES -> "passes";
                case FAILS -> "fails";
                case NOT_PROVEN -> "not proven";
            };
            String number = String.format(Locale.ROOT, format, value);
            String most = String.format(Locale.ROOT, format, limit);
            sentences.add(Character.toUpperCase(what.charAt(0)) + what.substring(1) + " " + number + ", at most " + most
                    + " " + unit + ": " + outcome + ".");
            verdict = order(one) > order(verdict) ? one : verdict;
        }

        void fail(String sentence) {
            sentences.add(sentence);
            verdict = Verdict.FAILS;
        }

        void note(String sentence) {
            sentences.add(sentence);
        }

        String text() {
            return String.join(" ", sentences);
        }
    }
}
