package oakum.physics.trend;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;
import oakum.physics.filtration.CleanCurve;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import oakum.physics.numerics.Median;
import oakum.physics.numerics.TheilSen;
import org.jspecify.annotations.Nullable;

/** How a filter fills, told from its pressure drop and airflow, and when it is due. */
public final class FilterLoadTrend {
    private static final Source FIRM = FilterRules.FIRM;
    private static final Source ROBUST = Source.fromMemory(
            "Sen 1968, Journal of the American Statistical Association 63, 1379–1389 (slope of Theil and Sen)");
    private static final Source LIKE_WITH_LIKE =
            Source.commonPractice("filter drop brought to one airflow by the clean curve before any trend");
    private static final Source REGRESSION =
            Source.commonPractice("inverse prediction from the confidence band of a least-squares line");
    static final String HOUSE_FLOWS = "airflows of air handlers in houses";
    static final String HOUSE_PRESSURES = "air handlers in houses";

    /** Good days that make a clean mark, and within how many days after the visit they must lie. */
    private static final int CLEAN_MARK_DAYS = 7;

    private static final int CLEAN_MARK_WITHIN_D = 14;
    private static final int SILENT_AFTER_D = 14;
    private static final double MONTH_D = 365.0 / 12;
    private static final double CONFIDENCE = 0.80;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "filter-load-trend", "1.0", "Filter load trend", Input.class, Output.class)
            .purpose("Tells from pressure and airflow how full a filter is, how fast it fills, and when it is due.")
            .equation("Δp_design(Q) = a·v + b·(ρ/1.2)·v²,  v = Q/A", LIKE_WITH_LIKE)
            .equation("clean mark c = median of Δp/Δp_design(Q) over the first 7 good days after the visit", FIRM)
            .equation("filter load K = Δp/(c·Δp_design(Q))", LIKE_WITH_LIKE)
            .equation(
                    "slope s = median of all pairwise slopes of K, over the last 28 days and over the whole life",
                    ROBUST)
            .equation(
                    "filling early: s of 28 days > 2·s of the whole life for 14 days, and fast enough to fill a new filter within"
                            + " the longest time",
                    FIRM)
            .equation(
                    "K at which the static budget is used up = (limit − other static)/(c·Δp_design(Q_high))",
                    LIKE_WITH_LIKE)
            .equation(
                    "due = day of K + (K_change − K)/s, or of the static budget, or 12 months, whichever is first",
                    FIRM)
            .equation(
                    "least squares K = α + β·t and ln K = α + β·t; 80 % interval where α + β·t ± T·s·√(1/N + (t − t̄)²/S)"
                            + " meets the limit",
                    REGRESSION)
            .source(FIRM)
            .source(ROBUST)
            .source(LIKE_WITH_LIKE)
            .caution(
                    new Caution(
                            "Electrical",
                            "Before a filter rack is opened the fan is switched off at its disconnect and cannot start by itself."))
            .caution(new Caution(
                    "Mould",
                    "A filter left in a damp rack or beyond its time can grow mould, however little it has filled."))
            .validation(
                    "Slopes, intervals and fits agree with a general statistics library; due dates worked by hand for"
                            + " sixteen weeks of one filter and for twelve filters. No published example found.")
            .by(FilterLoadTrend::compute);

    private FilterLoadTrend() {}

    /** The value of one day. */
    public record Sample(
            @Entry(label = "Day", help = "As 2026-05-12, in the house's own time.", maxLength = 10)
            String date,

            @Quantity(
                    label = "Pressure drop",
                    symbol = "Δp",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES,
                    help = "Median of the day's readings with the fan steady, at least twenty of them.")
            double dropPa,

            @Quantity(
                    label = "Airflow",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 10,
                    limitSource = HOUSE_FLOWS,
                    help = "Through all filters side by side; leave out where only one fixed fan speed is known.")
            @Nullable
            Double flowM3PerS,

            @Entry(label = "Leave this day out", help = "Defrost, open panel, wet coil.") @Nullable
            Boolean leftOut) {}

    /** The filter, its readings and the rules. */
    public record Input(
            @Entry(label = "Filter put in on", help = "As 2026-01-27.", maxLength = 10)
            String fittedDate,

            @Entry(label = "Today", help = "As 2026-05-14.", maxLength = 10)
            String todayDate,

            @Entry(label = "Days", help = "One value a day.", minRows = 1, maxRows = 400)
            List<Sample> samples,

            @Quantity(
                    label = "Nominal face area, all filters",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 0.001,
                    max = 20,
                    limitSource = "filters of air handlers in houses")
            double faceAreaM2,

            @Quantity(
                    label = "Clean curve, drag part",
                    symbol = "a",
                    unit = Unit.PASCAL_PER_VELOCITY,
                    min = 0,
                    max = 1000,
                    limitSource = "filters of air handlers in houses",
                    help = "From the maker's rated points.")
            double linearPaSPerM,

            @Quantity(
                    label = "Clean curve, inertia part",
                    symbol = "b",
                    unit = Unit.PASCAL_PER_VELOCITY_SQUARED,
                    min = 0,
                    max = 1000,
                    limitSource = "filters of air handlers in houses",
                    help = "At 1.2 kg/m³.")
            double squarePaS2PerM2,

            @Quantity(
                    label = "Clean mark kept from setting to work",
                    symbol = "c",
                    unit = Unit.ONE,
                    min = 0,
                    minExclusive = true,
                    max = 10,
                    limitSource = "a ratio to the design curve",
                    help = "Clean drop over the design curve's; left out, it is taken from the first 7 good days.")
            @Nullable
            Double cleanMark,

            @Quantity(
                    label = "Airflow at the fixed fan speed",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 10,
                    limitSource = HOUSE_FLOWS,
                    help = "Needed where a day has no airflow of its own.")
            @Nullable
            Double fixedSpeedM3PerS,

            @Quantity(
                    label = "Airflow, high",
                    symbol = "Q_high",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 10,
                    limitSource = HOUSE_FLOWS)
            double highM3PerS,

            @Quantity(
                    label = "Greatest external static of the air handler",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES,
                    help = "Left out, the static budget is not looked at.")
            @Nullable
            Double staticLimitPa,

            @Quantity(
                    label = "Other external static at high airflow",
                    unit = Unit.PASCAL,
                    min = 0,
                    max = 2500,
                    limitSource = HOUSE_PRESSURES,
                    help = "Ducts, grilles, coil outside the rating.")
            @Nullable
            Double otherStaticPa,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = "inhabited places")
            double altitudeM,

            @Quantity(
                    label = "Air temperature at the filter",
                    unit = Unit.CELSIUS,
                    min = -20,
                    max = 60,
                    limitSource = "return air of houses")
            double airC,

            @Entry(label = "Rules of the firm") FilterRules rules) {}

    /** The load of one day. */
    public record Load(
            @Entry(label = "Day") String date,

            @Quantity(label = "Filter load", symbol = "K", unit = Unit.ONE, step = 0.001)
            double load) {}

    /** Where the filter stands today. */
    public enum Standing implements Labelled {
        NOT_YET("no visit needed yet"),
        WINDOW_OPEN("window open"),
        DUE("due");

        private final String label;

        Standing(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** How full, how fast, when. */
    public record Output(
            @Entry(label = "Standing") Standing standing,

            @Quantity(label = "Filter load", symbol = "K", unit = Unit.ONE, step = 0.01, leading = true)
            double load,

            @Entry(label = "Load of the day") String loadDate,

            @Quantity(label = "Clean mark", symbol = "c", unit = Unit.ONE, step = 0.01)
            double cleanMarkUsed,

            @Quantity(label = "Slope, last 28 days", unit = Unit.LOAD_PER_DAY, step = 0.0001, leading = true) @Nullable
            Double recentSlopePerD,

            @Quantity(label = "Slope, last 28 days, lower end", unit = Unit.LOAD_PER_DAY, step = 0.0001) @Nullable
            Double recentLowPerD,

            @Quantity(label = "Slope, last 28 days, upper end", unit = Unit.LOAD_PER_DAY, step = 0.0001) @Nullable
            Double recentHighPerD,

            @Quantity(label = "Slope, whole life", unit = Unit.LOAD_PER_DAY, step = 0.0001) @Nullable
            Double lifeSlopePerD,

            @Entry(label = "Filling early") boolean fillingEarly,
            @Entry(label = "Filling early since") @Nullable String fillingEarlySinceDate,

            @Entry(label = "Last day before the change") @Nullable
            String changeAfterDate,

            @Entry(label = "First day after the change") @Nullable
            String changeByDate,

            @Quantity(label = "Slope before the change", unit = Unit.LOAD_PER_DAY, step = 0.0001) @Nullable
            Double slopeBeforePerD,

            @Quantity(label = "Slope since the change", unit = Unit.LOAD_PER_DAY, step = 0.0001) @Nullable
            Double slopeSincePerD,

            @Quantity(label = "Static budget used up at filter load", unit = Unit.ONE, step = 0.01) @Nullable
            Double usedUpLoad,

            @Entry(label = "Window opens") @Nullable String windowOpensDate,
            @Entry(label = "Due") String dueDate,
            @Entry(label = "Due because of") FilterWindow.Why dueBecause,
            @Entry(label = "Latest planned visit") String latestVisitDate,
            @Entry(label = "Due at the earliest") String dueEarliestDate,
            @Entry(label = "Due at the latest") String dueLatestDate,

            @Quantity(label = "Days until due", unit = Unit.DAY, step = 1, leading = true)
            double untilDueD,

            @Entry(label = "Better least-squares law") LoadingLaw.@Nullable Form lawForm,

            @Quantity(label = "That law reaches the change, days after it was put in", unit = Unit.DAY, step = 0.1)
            @Nullable
            Double lawDueD,

            @Quantity(label = "Its 80 % interval, earliest", unit = Unit.DAY, step = 0.1) @Nullable
            Double lawEarliestD,

            @Quantity(label = "Its 80 % interval, latest", unit = Unit.DAY, step = 0.1) @Nullable
            Double lawLatestD,

            @Entry(label = "Filter load by day") List<Load> loads,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        LocalDate fitted = date("fittedDate", in.fittedDate());
        LocalDate today = date("todayDate", in.todayDate());
        if (today.isBefore(fitted)) {
            throw refused("todayDate", in.todayDate(), "Today lies before the day the filter was put in.");
        }
        FilterRules rules = in.rules();
        if (rules.windowLoad() > rules.changeLoad()) {
            throw refused(
                    "rules.windowLoad",
                    rules.windowLoad(),
                    "The window opens at a higher load than the change asks for.");
        }
        double density = MoistAir.dryAirDensityKgPerM3(in.airC(), StandardAtmosphere.pressurePa(in.altitudeM()));
        List<Notice> notices = new ArrayList<>();
        SortedMap<LocalDate, Double> ratios = ratios(in, fitted, today, density, notices);
        double mark = cleanMark(in, fitted, ratios, notices);

        List<LocalDate> dates = List.copyOf(ratios.keySet());
        double[] days = dates.stream()
                .mapToDouble(d -> ChronoUnit.DAYS.between(fitted, d))
                .toArray();
        double[] loads = ratios.values().stream().mapToDouble(r -> r / mark).toArray();
        LoadSeries series = new LoadSeries(days, loads);
        int last = series.size() - 1;
        LocalDate lastDate = dates.get(last);
        if (ChronoUnit.DAYS.between(lastDate, today) > SILENT_AFTER_D) {
            notices.add(Notice.advice(
                    "readings-stopped",
                    "samples",
                    "The last value is of " + shown(lastDate) + ": look at the pressure sensor.",
                    FIRM));
        }

        Optional<TheilSen> recent = series.recent(last);
        Optional<TheilSen> life = series.life(last);
        Optional<TheilSen> used = recent.isPresent() ? recent : life;
        double load = used.map(line -> line.at(series.day(last))).orElse(series.load(last));
        Double usedUp = usedUpLoad(in, mark, density, notices);
        FilterWindow window =
                FilterWindow.of(load, used.map(TheilSen::slope).orElse(0.0), lastDate, rules, usedUp, fitted);
        FilterWindow soonest =
                FilterWindow.of(load, used.map(TheilSen::upperSlope).orElse(0.0), lastDate, rules, usedUp, fitted);
        FilterWindow last80 =
                FilterWindow.of(load, used.map(TheilSen::lowerSlope).orElse(0.0), lastDate, rules, usedUp, fitted);
        LocalDate due = known(window.due());
        Optional<LoadSeries.Early> early = series.fillingEarly(
                rules.earlyRatio(),
                rules.earlyAfterD(),
                (rules.changeLoad() - 1) / (rules.longestMonthCount() * MONTH_D));
        early.ifPresent(e -> notices.add(early(e, dates)));
        easy(series, dates, notices);
        if (used.isEmpty()) {
            notices.add(Notice.note(
                    "no-slope-yet",
                    "samples",
                    "Fewer than " + LoadSeries.LEAST_VALUES + " values over " + (int) LoadSeries.LEAST_SPAN_D
                            + " days: no slope yet, due by the longest time in place.",
                    FIRM));
        }
        Optional<LoadingLaw> law = loads.length < 3 ? Optional.empty() : Optional.of(LoadingLaw.better(days, loads));
        double ruling = Math.min(rules.changeLoad(), usedUp == null ? Double.POSITIVE_INFINITY : usedUp);
        Optional<LoadingLaw.Crossing> crossing = law.flatMap(l -> l.reaches(ruling, CONFIDENCE));
        crossing.filter(LoadingLaw.Crossing::guess)
                .ifPresent(c -> notices.add(Notice.note(
                        "law-is-a-guess",
                        "lawDueD",
                        "The least-squares law reaches the change beyond twice the time observed: a guess.",
                        REGRESSION)));

        return new Output(
                standing(window, due, today),
                load,
                lastDate.toString(),
                mark,
                value(recent.map(TheilSen::slope)),
                value(recent.map(TheilSen::lowerSlope)),
                value(recent.map(TheilSen::upperSlope)),
                value(life.map(TheilSen::slope)),
                early.isPresent(),
                text(early.map(e -> dates.get(e.firstIndex()))),
                text(early.map(e -> dates.get(e.breakIndex() - 1))),
                text(early.map(e -> dates.get(e.breakIndex()))),
                value(early.map(LoadSeries.Early::slopeBefore)),
                value(early.map(LoadSeries.Early::slopeSince)),
                usedUp,
                text(opens(series, dates, window, rules)),
                due.toString(),
                known(window.why()),
                known(window.latestVisit()).toString(),
                known(soonest.due()).toString(),
                known(last80.due()).toString(),
                ChronoUnit.DAYS.between(today, due),
                law.map(LoadingLaw::form).orElse(null),
                value(crossing.map(LoadingLaw.Crossing::day)),
                value(crossing.map(LoadingLaw.Crossing::earliest)),
                value(crossing.map(LoadingLaw.Crossing::latest)),
                loads(dates, loads),
                List.copyOf(notices));
    }

    /** Measured drop over the design curve's, by day, without the days left out. */
    private static SortedMap<LocalDate, Double> ratios(
            Input in, LocalDate fitted, LocalDate today, double density, List<Notice> notices) {
        CleanCurve curve = new CleanCurve(in.linearPaSPerM(), in.squarePaS2PerM2());
        if (!(curve.dropPa(1, density) > 0)) {
            throw refused("linearPaSPerM", in.linearPaSPerM(), "The clean curve is 0 at every airflow.");
        }
        SortedMap<LocalDate, Double> ratios = new TreeMap<>();
        int withoutFlow = 0;
        for (int i = 0; i < in.samples().size(); i++) {
            Sample sample = in.samples().get(i);
            String at = "samples[" + i + "].";
            LocalDate day = date(at + "date", sample.date());
            if (day.isBefore(fitted) || day.isAfter(today)) {
                throw refused(at + "date", sample.date(), "The day lies outside " + fitted + " to " + today + ".");
            }
            if (Boolean.TRUE.equals(sample.leftOut())) {
                continue;
            }
            Double flow = sample.flowM3PerS();
            if (flow == null) {
                withoutFlow++;
                flow = in.fixedSpeedM3PerS();
            }
            if (flow == null) {
                throw refused(at + "flowM3PerS", "", "A day without airflow needs the airflow at the fixed fan speed.");
            }
            double ratio = sample.dropPa() / curve.dropPa(flow / in.faceAreaM2(), density);
            if (ratios.put(day, ratio) != null) {
                throw refused(at + "date", sample.date(), "Two values for one day; give its median.");
            }
        }
        if (ratios.isEmpty()) {
            throw refused("samples", in.samples().size(), "Every day is left out.");
        }
        if (withoutFlow > 0) {
            notices.add(Notice.advice(
                    "flow-unknown",
                    "samples",
                    withoutFlow + " of " + in.samples().size() + " days have no airflow and are read at one fixed fan"
                            + " speed. A fan whose airflow falls hides the loading: a slope that looks flatter then is not"
                            + " proof that loading has slowed.",
                    LIKE_WITH_LIKE));
        }
        return ratios;
    }

    private static double cleanMark(
            Input in, LocalDate fitted, SortedMap<LocalDate, Double> ratios, List<Notice> notices) {
        Double mark = in.cleanMark();
        if (mark == null) {
            double[] first = ratios.headMap(fitted.plusDays(CLEAN_MARK_WITHIN_D)).values().stream()
                    .limit(CLEAN_MARK_DAYS)
                    .mapToDouble(Double::doubleValue)
                    .toArray();
            if (first.length < CLEAN_MARK_DAYS) {
                notices.add(Notice.note(
                        "clean-mark-open",
                        "cleanMark",
                        first.length + " good days in the first " + CLEAN_MARK_WITHIN_D + "; a clean mark needs "
                                + CLEAN_MARK_DAYS + ". The design curve stands in for it.",
                        FIRM));
                return 1;
            }
            mark = Median.of(first);
        }
        double tolerance = in.rules().cleanMarkToleranceFraction();
        if (Math.abs(mark - 1) > tolerance) {
            notices.add(Notice.rejected(
                    "filter-looks-wrong",
                    "cleanMarkUsed",
                    String.format(
                            Locale.ROOT,
                            "The clean filter stands at %.2f of its design curve, more than %.0f %% away: the filter looks"
                                    + " wrong. Check size, grade, gap and direction.",
                            mark,
                            100 * tolerance),
                    FIRM));
        }
        return mark;
    }

    private static @Nullable Double usedUpLoad(Input in, double mark, double density, List<Notice> notices) {
        Double limit = in.staticLimitPa();
        Double other = in.otherStaticPa();
        if (limit == null && other == null) {
            return null;
        }
        if (limit == null || other == null) {
            throw refused(
                    limit == null ? "staticLimitPa" : "otherStaticPa",
                    "",
                    "The static budget needs both the air handler's greatest static and the other static.");
        }
        if (other >= limit) {
            throw refused("otherStaticPa", other, "Nothing of the static of " + limit + " Pa is left for the filter.");
        }
        double clean = mark
                * new CleanCurve(in.linearPaSPerM(), in.squarePaS2PerM2())
                        .dropPa(in.highM3PerS() / in.faceAreaM2(), density);
        double load = (limit - other) / clean;
        if (load < in.rules().noVisitBelowLoad()) {
            notices.add(Notice.advice(
                    "budget-too-tight",
                    "usedUpLoad",
                    String.format(
                            Locale.ROOT,
                            "The static budget is used up at filter load %.2f: more face area is needed.",
                            load),
                    FIRM));
        }
        return load;
    }

    private static Standing standing(FilterWindow window, LocalDate due, LocalDate today) {
        if (!due.isAfter(today)) {
            return Standing.DUE;
        }
        LocalDate opens = window.opens();
        return opens != null && !opens.isAfter(today) ? Standing.WINDOW_OPEN : Standing.NOT_YET;
    }

    private static Optional<LocalDate> opens(
            LoadSeries series, List<LocalDate> dates, FilterWindow window, FilterRules rules) {
        int since = series.above(rules.windowLoad());
        return window.open() && since >= 0 ? Optional.of(dates.get(since)) : Optional.ofNullable(window.opens());
    }

    private static Notice early(LoadSeries.Early early, List<LocalDate> dates) {
        return Notice.advice(
                "filling-early",
                "fillingEarlySinceDate",
                String.format(
                        Locale.ROOT,
                        "Filling early since %s: %.3f a week against %.3f before. The change lies between %s and %s. Ask"
                                + " why: sanding, smoke, pets, a new road, another fan speed.",
                        shown(dates.get(early.firstIndex())),
                        7 * early.slopeSince(),
                        7 * early.slopeBefore(),
                        shown(dates.get(early.breakIndex() - 1)),
                        shown(dates.get(early.breakIndex()))),
                FIRM);
    }

    private static void easy(LoadSeries series, List<LocalDate> dates, List<Notice> notices) {
        int index = series.suddenlyEasy();
        if (index > 0) {
            notices.add(Notice.advice(
                    "suddenly-easy",
                    "loads",
                    String.format(
                            Locale.ROOT,
                            "On %s the filter load fell from %.2f to %.2f: changed, missing or by-passed? Record the visit"
                                    + " where there was one.",
                            shown(dates.get(index)),
                            series.load(index - 1),
                            series.load(index)),
                    FIRM));
        }
    }

    private static List<Load> loads(List<LocalDate> dates, double[] loads) {
        List<Load> rows = new ArrayList<>();
        for (int i = 0; i < loads.length; i++) {
            rows.add(new Load(dates.get(i).toString(), loads[i]));
        }
        return List.copyOf(rows);
    }

    private static LocalDate date(String field, String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw refused(field, text, field + " = \"" + text + "\" is no date; write it as 2026-05-12.");
        }
    }

    private static Refused refused(String field, Object value, String sentence) {
        return new Refused(Violation.of(field, value, sentence, ""));
    }

    private static String shown(LocalDate date) {
        return date.format(DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH));
    }

    /** What a window always has once the day of fitting is known. */
    private static <T> T known(@Nullable T value) {
        if (value == null) {
            throw new IllegalStateException("a fitted filter is always due at some time");
        }
        return value;
    }

    private static @Nullable String text(Optional<LocalDate> date) {
        return date.map(LocalDate::toString).orElse(null);
    }

    private static @Nullable Double value(Optional<Double> number) {
        return number.filter(Double::isFinite).orElse(null);
    }
}
