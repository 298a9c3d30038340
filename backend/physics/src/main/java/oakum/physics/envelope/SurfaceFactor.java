package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** How warm an inside surface stays, and the indoor humidity it allows. */
public final class SurfaceFactor {
    private static final double MOULD = 0.8;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "surface-temperature-factor", "1.0", "Surface temperature factor", Input.class, Output.class)
            .purpose(
                    "Tells whether an inside surface stays warm enough against mould or condensation, and how humid the"
                            + " rooms may be.")
            .equation("f = (θ_si − θ_e)/(θ_i − θ_e) = 1 − U·R_si, U with that same R_si", Citations.FACTOR)
            .equation(
                    "θ_si,min = θ(p_i/φ_cr), f_min = (θ_si,min − θ_e)/(θ_i − θ_e); the worst month governs",
                    Citations.FACTOR)
            .equation("φ_i,max = φ_cr·p_sat(θ_si)/p_sat(θ_i)", Citations.FACTOR)
            .source(Citations.FACTOR)
            .source(Citations.SATURATION)
            .source(Citations.CLASSES)
            .source(Citations.NATIONAL_FACTORS)
            .caution(Cautions.MOULD)
            .validation(
                    "The German 0.70 at 20 °C, 50 % and −5 °C comes out as 12.6 °C and 0.705; further cases computed a"
                            + " second time by independent code.")
            .by(SurfaceFactor::compute);

    private SurfaceFactor() {}

    /** What the surface is, which decides how still the air before it is. */
    public enum Surface implements Labelled {
        OPAQUE("wall, roof or floor, furniture before it", 0.25),
        GLASS_OR_FRAME("glass or frame", 0.13);

        private final String label;
        private final double resistanceM2KPerW;

        Surface(String label, double resistanceM2KPerW) {
            this.label = label;
            this.resistanceM2KPerW = resistanceM2KPerW;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return Citations.FACTOR.printed();
        }
    }

    /** What must not happen at the surface. */
    public enum Criterion implements Labelled {
        MOULD("mould: at most 80 % at the surface", SurfaceFactor.MOULD),
        CONDENSATION("condensation: at most 100 %", 1.0),
        CORROSION("corrosion: at most 60 %", 0.6);

        private final String label;
        private final double humidityFraction;

        Criterion(String label, double humidityFraction) {
            this.label = label;
            this.humidityFraction = humidityFraction;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return Citations.FACTOR.printed();
        }
    }

    /** Temperatures that were read at the same time. */
    public record Measured(
            @Quantity(
                    label = "Surface temperature",
                    symbol = "θ_si",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = InputRange.SATURATION)
            double surfaceC,

            @Quantity(
                    label = "Indoor temperature",
                    symbol = "θ_i",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = InputRange.SATURATION)
            double indoorC,

            @Quantity(
                    label = "Outdoor temperature",
                    symbol = "θ_e",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = InputRange.SATURATION)
            double outdoorC) {}

    /** A surface, known in one of three ways, and the climate. */
    public record Input(
            @Entry(label = "Surface") Surface surface,

            @Quantity(
                    label = "U-value",
                    symbol = "U",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 0.01,
                    max = 10,
                    limitSource = InputRange.PLAUSIBLE,
                    help = "One of U-value, factor and measured temperatures.")
            @Nullable
            Double uValueWPerM2K,

            @Quantity(
                    label = "Inside surface resistance in that U-value",
                    symbol = "R_si",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.PLAUSIBLE,
                    help = "0.13 in the usual one of a wall; left out: that of this check.")
            @Nullable
            Double insideSurfaceM2KPerW,

            @Quantity(
                    label = "Surface temperature factor",
                    symbol = "f",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "0 is outdoors, 1 is indoors",
                    help = "From a two- or three-dimensional calculation of the detail.")
            @Nullable
            Double factorFraction,

            @Entry(label = "Measured temperatures") @Nullable
            Measured measured,

            @Entry(label = "Must not happen") Criterion criterion,

            @Entry(label = "Months, January first; or single days", minRows = 1, maxRows = 12)
            List<MonthRow> months,

            @Entry(label = "Indoor humidity") IndoorHumidity indoorHumidity) {
        public Input {
            months = List.copyOf(months);
        }
    }

    /** One row of the climate. */
    public record Month(
            @Quantity(label = "Outdoor temperature", symbol = "θ_e", unit = Unit.CELSIUS, step = 0.01)
            double outdoorC,

            @Quantity(label = "Indoor temperature", symbol = "θ_i", unit = Unit.CELSIUS, step = 0.01)
            double indoorC,

            @Quantity(label = "Least surface temperature", symbol = "θ_si,min", unit = Unit.CELSIUS, step = 0.01)
            double leastSurfaceC,

            @Quantity(label = "Least factor", symbol = "f_min", unit = Unit.ONE, step = 0.001) @Nullable
            Double leastFactor,

            @Quantity(label = "Surface temperature", symbol = "θ_si", unit = Unit.CELSIUS, step = 0.01)
            double surfaceC,

            @Quantity(label = "Humidity at the surface", symbol = "φ_s", unit = Unit.FRACTION, step = 0.001)
            double surfaceHumidityFraction,

            @Quantity(label = "Indoor humidity allowed against mould", unit = Unit.FRACTION, step = 0.001)
            double mouldHumidityFraction,

            @Quantity(label = "Indoor humidity allowed against condensation", unit = Unit.FRACTION, step = 0.001)
            double condensationHumidityFraction) {}

    /** What the surface stands. */
    public record Output(
            @Quantity(label = "Surface temperature factor", symbol = "f", unit = Unit.ONE, step = 0.001, leading = true)
            double factor,

            @Quantity(
                    label = "Factor needed in the worst month",
                    symbol = "f_min",
                    unit = Unit.ONE,
                    step = 0.001,
                    leading = true,
                    help = "Left out where it is never colder outdoors.")
            @Nullable
            Double neededFactor,

            @Quantity(label = "Worst month, counted from the first row", unit = Unit.COUNT) @Nullable
            Integer worstMonthCount,

            @Entry(label = "Warm enough") @Nullable Verdict verdict,
            @Entry(label = "Month by month") List<Month> months,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        double factor = factor(in);
        List<Month> months = new ArrayList<>();
        Double worst = null;
        Integer worstAt = null;
        for (int i = 0; i < in.months().size(); i++) {
            Month month = month(in, i, factor);
            months.add(month);
            Double least = month.leastFactor();
            if (least != null && (worst == null || least > worst)) {
                worst = least;
                worstAt = i + 1;
            }
        }
        return new Output(
                factor,
                worst,
                worstAt,
                worst == null ? null : Verdict.atMost(worst, 0, factor),
                months,
                notices(factor, worst));
    }

    private static double factor(Input in) {
        int ways = (in.uValueWPerM2K() == null ? 0 : 1)
                + (in.factorFraction() == null ? 0 : 1)
                + (in.measured() == null ? 0 : 1);
        if (ways != 1) {
            throw Refused.of(
                    "uValueWPerM2K",
                    Integer.toString(ways),
                    "Give exactly one of U-value (uValueWPerM2K), factor (factorFraction) and measured temperatures"
                            + " (measured); " + ways + " were given.",
                    Citations.FACTOR);
        }
        if (in.factorFraction() != null) {
            return in.factorFraction();
        }
        if (in.measured() != null) {
            return measured(in.measured());
        }
        double check = in.surface().resistanceM2KPerW;
        double within = in.insideSurfaceM2KPerW() == null ? check : in.insideSurfaceM2KPerW();
        double resistance = 1 / (in.uValueWPerM2K() == null ? 1 : in.uValueWPerM2K()) + check - within;
        if (resistance <= check) {
            throw Refused.of(
                    "insideSurfaceM2KPerW",
                    Double.toString(within),
                    "The U-value leaves no resistance beside the inside surface (insideSurfaceM2KPerW) of " + within
                            + " m2.K/W.",
                    Citations.FACTOR);
        }
        return 1 - check / resistance;
    }

    private static double measured(Measured read) {
        if (read.indoorC() - read.outdoorC() < 1) {
            throw Refused.of(
                    "measured.outdoorC",
                    Double.toString(read.outdoorC()),
                    "Indoors (measured.indoorC) must be at least 1 K warmer than outdoors (measured.outdoorC) to read a"
                            + " factor from temperatures.",
                    Citations.FACTOR);
        }
        double factor = (read.surfaceC() - read.outdoorC()) / (read.indoorC() - read.outdoorC());
        if (factor < 0 || factor > 1) {
            throw Refused.of(
                    "measured.surfaceC",
                    Double.toString(read.surfaceC()),
                    "The surface (measured.surfaceC) was " + read.surfaceC() + " Cel, not between outdoors "
                            + read.outdoorC() + " and indoors " + read.indoorC() + " Cel: no factor follows.",
                    Citations.FACTOR);
        }
        return factor;
    }

    private static Month month(Input in, int i, double factor) {
        MonthRow row = in.months().get(i);
        double indoor = row.indoorTemperatureC(in.indoorHumidity());
        double vapour = row.indoorVapourPa(in.indoorHumidity(), "months[" + i + "]");
        double least = Iso13788Saturation.dewPointC(vapour / in.criterion().humidityFraction);
        double difference = indoor - row.outdoorC();
        double surface = row.outdoorC() + factor * difference;
        double allowed = Iso13788Saturation.pressurePa(surface) / Iso13788Saturation.pressurePa(indoor);
        return new Month(
                row.outdoorC(),
                indoor,
                least,
                difference > 0 ? (Double) ((least - row.outdoorC()) / difference) : null,
                surface,
                vapour / Iso13788Saturation.pressurePa(surface),
                Math.min(1, MOULD * allowed),
                Math.min(1, allowed));
    }

    private static List<Notice> notices(double factor, @Nullable Double worst) {
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.note(
                "national-limits",
                "factor",
                String.format(
                        Locale.ROOT,
                        "For comparison: 0.75 is asked of dwellings in Britain, 0.72 in Poland, 0.70 in Germany; here it is"
                                + " %.3f.",
                        factor),
                Citations.NATIONAL_FACTORS));
        if (worst != null && worst > 1) {
            notices.add(Notice.advice(
                    "humidity-beyond-any-surface",
                    "neededFactor",
                    "The indoor air itself is too humid: a surface as warm as the room would not do.",
                    Citations.FACTOR));
        }
        return notices;
    }
}
