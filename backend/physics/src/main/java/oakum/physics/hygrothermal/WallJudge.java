package oakum.physics.hygrothermal;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Verdict;
import oakum.physics.material.Material;
import oakum.physics.material.MouldSensitivity;
import oakum.physics.mould.BelowFreezingMould;
import oakum.physics.mould.MouldGrowth;
import oakum.physics.mould.MouldSurface;
import oakum.physics.mould.ThirtyDayHumidity;
import oakum.physics.mould.WoodMoistureState;
import oakum.physics.mould.WoodMoistureWatch;
import oakum.physics.weather.HourlyWeather;
import org.jspecify.annotations.Nullable;

/** Takes the hours of a run and judges them layer by layer. */
final class WallJudge implements HourSink {
    /** Materials of which the criteria of wood hold. */
    private static final Set<String> WOOD = Set.of("spruce", "cedar", "plywood", "osb", "wood-fibre-board");

    /** Decline of mould where nothing was tested (ASHRAE 160-2016, from memory). */
    private static final double DECLINE_FACTOR = 0.1;

    private static final double ONE_WAY = 0.85;
    private static final double HOURS_PER_DAY = 24;
    private static final int HOURS_PER_YEAR = HourlyWeather.HOURS_OF_YEAR;
    private static final Source CRITERIA = Source.fromMemory("ANSI/ASHRAE 160-2016 addendum e: mould index below 3");
    private static final Source WATER =
            Source.seen("wood kept below 20 % does not rot (several handbooks); 20 % is the design limit");

    private final WallCase made;
    private final int lastYearFrom;
    private final List<@Nullable Watch> watches = new ArrayList<>();
    private final PlaneRisks risks;
    private final double[] peak;
    private final double[] worst;
    private final double[] least;
    private final int[] peakHour;

    /** A judged layer: which planes, and its water where it is wood. */
    private record Watch(int innerPlane, @Nullable WoodMoistureWatch wood) {}

    WallJudge(WallCase made) {
        this.made = made;
        int layers = made.parts.size();
        peak = new double[layers];
        worst = new double[layers];
        least = new double[layers];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        peakHour = new int[layers];
        lastYearFrom = (made.input.years() - 1) * HOURS_PER_YEAR;
        List<PlaneRisks.Surface> surfaces = new ArrayList<>();
        for (WallCase.Part part : made.parts) {
            Material material = part.material();
            MouldSensitivity sensitivity =
                    material == null ? null : material.values().mouldSensitivity();
            if (part.innerPlane() >= 0) {
                MouldSurface surface =
                        sensitivity == null ? MouldSurface.RESISTANT : MouldSurface.valueOf(sensitivity.name());
                PlaneRisks.Surface face = new PlaneRisks.Surface(surface, DECLINE_FACTOR, BelowFreezingMould.DECLINES);
                surfaces.add(face);
                surfaces.add(face);
            }
            watches.add(
                    !part.judged() || part.innerPlane() < 0 || sensitivity == null
                            ? null
                            : new Watch(part.innerPlane(), isWood(part) ? new WoodMoistureWatch() : null));
        }
        risks = new PlaneRisks(surfaces);
    }

    private boolean isWood(WallCase.Part part) {
        return (made.input.cut() == WallCut.THROUGH_FRAMING && part.row().framingMaterialId() != null)
                ? WOOD.contains(part.row().framingMaterialId())
                : part.row().materialId() != null && WOOD.contains(part.row().materialId());
    }

    @Override
    public void accept(HourView hour) {
        risks.accept(hour);
        boolean lastYear = hour.hour() > lastYearFrom;
        for (int l = 0; l < made.parts.size(); l++) {
            WallCase.Part part = made.parts.get(l);
            if (!(part.layer() instanceof SolidLayer solid)) {
                continue;
            }
            double wettest = hour.layerWorstWaterKgPerM3(l) / solid.densityKgPerM3();
            if (lastYear) {
                double mean = hour.layerWaterKgPerM3(l) / solid.densityKgPerM3();
                if (mean > peak[l]) {
                    peak[l] = mean;
                    peakHour[l] = hour.hour();
                }
                worst[l] = Math.max(worst[l], wettest);
                least[l] = Math.min(least[l], mean);
            }
            Watch watch = watches.get(l);
            if (lastYear && watch != null && watch.wood() != null) {
                double temperature = 0.5
                        * (hour.planeTemperatureC(part.innerPlane()) + hour.planeTemperatureC(part.innerPlane() + 1));
                watch.wood().add(hour.hour() - lastYearFrom, temperature, wettest);
            }
        }
    }

    WallMoistureResult result(RunResult solved) {
        double limit = made.input.woodLimitFraction() == null
                ? WoodMoistureWatch.LIMIT_FRACTION
                : made.input.woodLimitFraction();
        List<WallMoistureResult.LayerWater> layers = new ArrayList<>();
        for (int l = 0; l < made.parts.size(); l++) {
            layers.add(layer(l, limit, solved.layers().get(l)));
        }
        List<Notice> notices = new ArrayList<>(made.notices);
        say(solved, layers, notices);
        Optional<WallMoistureResult.LayerWater> wettest = layers.stream()
                .filter(w -> w.roomLeftFraction() != null)
                .min(Comparator.comparingDouble(w -> Objects.requireNonNull(w.roomLeftFraction())));
        Double mould = layers.stream()
                .map(WallMoistureResult.LayerWater::mouldIndex)
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .orElse(null);
        Verdict whole = worstOf(layers);
        return new WallMoistureResult(
                inWords(solved, whole, wettest, mould, limit),
                whole,
                wettest.map(WallMoistureResult.LayerWater::peakFraction).orElse(null),
                limit,
                mould,
                MouldGrowth.VISIBLE,
                solved.frostHours(),
                solved.yearsToBalance(),
                layers,
                solved.runOffKgPerM2(),
                solved.balance().waterErrorOfThroughput(),
                solved.balance().heatErrorOfThroughput(),
                notices);
    }

    private WallMoistureResult.LayerWater layer(int l, double woodLimit, RunResult.LayerResult solved) {
        WallCase.Part part = made.parts.get(l);
        Watch watch = watches.get(l);
        boolean stores = part.layer() instanceof SolidLayer && peak[l] > 0;
        Double limit = watch != null && watch.wood() != null ? woodLimit : null;
        Double mould = watch == null
                ? null
                : Math.max(
                        risks.mould(watch.innerPlane()).greatest(),
                        risks.mould(watch.innerPlane() + 1).greatest());
        Double thirty = watch == null
                ? null
                : greater(
                        risks.thirtyDays(watch.innerPlane()).greatest(),
                        risks.thirtyDays(watch.innerPlane() + 1).greatest());
        double inward = solved.lastYear().inwardShare();
        return new WallMoistureResult.LayerWater(
                part.row().id(),
                part.row().name(),
                stores ? peak[l] : null,
                stores ? day(made.firstDay, peakHour[l]) : null,
                stores ? worst[l] : null,
                stores ? solved.peakMassPercent() / 100 : null,
                stores ? least[l] : null,
                limit,
                limit == null ? null : limit - peak[l],
                !stores || Double.isNaN(inward) ? null : towards(inward),
                !stores || Double.isNaN(inward) ? null : inward,
                mould,
                thirty,
                watch == null || watch.wood() == null ? null : watch.wood().aboveLimitHours() / HOURS_PER_DAY,
                watch == null || watch.wood() == null
                        ? null
                        : Math.max(
                                risks.decay(watch.innerPlane()).massLossFraction(),
                                risks.decay(watch.innerPlane() + 1).massLossFraction()),
                watch == null || mould == null ? null : verdict(watch, mould, limit, peak[l]));
    }

    private static Verdict verdict(Watch watch, double mould, @Nullable Double limit, double peak) {
        Verdict growth = Verdict.atMost(mould, MouldGrowth.UNCERTAINTY, MouldGrowth.VISIBLE);
        if (limit == null || watch.wood() == null) {
            return growth;
        }
        boolean tooLong = watch.wood().state().compareTo(WoodMoistureState.WARNED) >= 0;
        return tooLong || peak > limit ? Verdict.FAILS : growth;
    }

    private static @Nullable Double greater(@Nullable Double a, @Nullable Double b) {
        if (a == null || b == null) {
            return a == null ? b : a;
        }
        return Math.max(a, b);
    }

    private static String towards(double inwardShare) {
        if (inwardShare >= ONE_WAY) {
            return "inside";
        }
        return inwardShare <= 1 - ONE_WAY ? "outside" : "both sides";
    }

    private static Verdict worstOf(List<WallMoistureResult.LayerWater> layers) {
        Verdict whole = Verdict.PASSES;
        for (WallMoistureResult.LayerWater layer : layers) {
            Verdict verdict = layer.verdict();
            if (verdict == Verdict.FAILS || (verdict == Verdict.NOT_PROVEN && whole == Verdict.PASSES)) {
                whole = verdict;
            }
        }
        return whole;
    }

    private void say(RunResult solved, List<WallMoistureResult.LayerWater> layers, List<Notice> notices) {
        notices.add(Notice.note(
                "one-line",
                "cut",
                "Heat and moisture are followed along one line, "
                        + made.input.cut().label() + "; corners, joins and studs beside the line are not seen.",
                WallCase.ASSUMED));
        notices.add(Notice.advice(
                "material-figures",
                "layers",
                "Sorption, liquid transport and the wet-cup values of the library are of the order of published ones, within"
                        + " about 30 %: compare variants with them, and put in tested figures before advice is given.",
                Source.fromMemory("spread of published material data")));
        if (solved.outcome() == RunResult.Outcome.FINISHED
                && solved.yearsToBalance() == null
                && made.input.years() > 1) {
            notices.add(Notice.advice(
                    "not-in-balance",
                    "years",
                    "After " + made.input.years()
                            + " years some layer still gains or loses more than 1 % of its water a"
                            + " year; let it run longer before you judge it.",
                    WallCase.ASSUMED));
        }
        for (WallMoistureResult.LayerWater layer : layers) {
            Double ever = layer.everPeakFraction();
            Double limit = layer.limitFraction();
            Double last = layer.peakFraction();
            if (ever != null && limit != null && last != null && ever > limit && last <= limit) {
                notices.add(Notice.advice(
                        "wet-first",
                        "layers[" + layer.id() + "]",
                        layer.label() + " passes " + percent(limit) + " while the built-in moisture dries ("
                                + percent(ever) + "), and no longer in the last year.",
                        WATER));
            }
            Double thirty = layer.thirtyDayFraction();
            if (thirty != null && thirty >= ThirtyDayHumidity.LIMIT_FRACTION) {
                notices.add(Notice.note(
                        "thirty-days",
                        "layers[" + layer.id() + "]",
                        "At " + layer.label() + " a running mean of 30 days reaches " + percent(thirty)
                                + " relative humidity above 5 °C; the older rule (80 %) was replaced by the mould index.",
                        Source.seen("ANSI/ASHRAE 160-2009, in an abstract of 2017")));
            }
        }
        if (solved.overfullHours() > 0) {
            notices.add(Notice.advice(
                    "water-stands",
                    "layers",
                    "In " + solved.overfullHours()
                            + " hours some place held more water than its material binds: there it"
                            + " would drip or run, which is not followed.",
                    WallCase.ASSUMED));
        }
        if (made.input.rainSite() == null) {
            notices.add(Notice.note(
                    "no-rain",
                    "rainSite",
                    "No driving rain is counted; run it again with rain behind the cladding.",
                    CRITERIA));
        }
        if (made.input.leakTightness() == null) {
            notices.add(Notice.note(
                    "no-leak",
                    "leakTightness",
                    "No indoor air leaks into the wall; run it again with a leak.",
                    WallCase.ASSUMED));
        }
        notices.add(Notice.note(
                "films",
                "",
                "Films: 8 W/(m²·K) inside and 17 W/(m²·K) outside, with their vapour coefficients.",
                WallCase.films()));
    }

    private String inWords(
            RunResult solved,
            Verdict whole,
            Optional<WallMoistureResult.LayerWater> wettest,
            @Nullable Double mould,
            double limit) {
        if (solved.outcome() != RunResult.Outcome.FINISHED) {
            return "The run ended after " + day(made.firstDay, solved.hoursDone())
                    + "; what is shown holds up to then.";
        }
        StringBuilder words = new StringBuilder();
        words.append(
                switch (whole) {
                    case PASSES -> "This wall stays dry.";
                    case FAILS -> "This wall gets too wet.";
                    default -> "This wall comes near its limit.";
                });
        wettest.ifPresent(w -> words.append(' ')
                .append(w.label())
                .append(" peaks at ")
                .append(percent(Objects.requireNonNull(w.peakFraction())))
                .append(" on ")
                .append(w.peakOn())
                .append("; limit ")
                .append(percent(limit))
                .append('.'));
        if (mould != null) {
            words.append(String.format(
                    Locale.ROOT, " Mould index %.1f of %.0f at which growth is seen.", mould, MouldGrowth.VISIBLE));
        }
        wettest.map(WallMoistureResult.LayerWater::driesTowards)
                .ifPresent(
                        side -> words.append(" It dries towards ").append(side).append('.'));
        return words.toString();
    }

    private static String percent(double fraction) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * fraction);
    }

    WallTape tape(RunResult solved) {
        List<WallTape.TapeLayer> layers = new ArrayList<>();
        double depth = 0;
        for (WallCase.Part part : made.parts) {
            double thickness = part.layer() instanceof SolidLayer solid
                    ? solid.thicknessM()
                    : part.layer() instanceof AirLayer air ? air.thicknessM() : 0;
            layers.add(new WallTape.TapeLayer(part.row().id(), part.row().name(), depth, thickness));
            depth += thickness;
        }
        return new WallTape(
                made.firstDay,
                layers,
                made.wall.planes().stream().map(Plane::name).toList(),
                solved.days(),
                solved.profiles());
    }

    /** "12 February of year 3". */
    static String day(LocalDate firstDay, int hour) {
        int days = Math.max(0, hour - 1) / (int) HOURS_PER_DAY;
        int dayOfYear = (firstDay.getDayOfYear() - 1 + days) % 365 + 1;
        LocalDate day = LocalDate.ofYearDay(firstDay.getYear(), dayOfYear);
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " of year "
                + (days / 365 + 1);
    }
}
