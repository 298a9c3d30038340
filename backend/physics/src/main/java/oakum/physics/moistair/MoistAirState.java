package oakum.physics.moistair;

import static oakum.physics.calculation.Canonical.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;
import oakum.physics.numerics.Roots;
import org.jspecify.annotations.Nullable;

/**
 * The state of moist air from any two quantities that fix it, at a pressure.
 *
 * <p>These pairs fix no state, or none that is worth having, and are refused:
 *
 * <ul>
 *   <li>two of dew point, humidity ratio and vapour pressure: at a given pressure they say the same thing;
 *   <li>wet bulb with enthalpy: the two run almost side by side, so that 0.1 K of wet bulb moves the dry bulb by tens of
 *       kelvin.
 * </ul>
 *
 * Volume and density are results only: at room temperature everything from dry to saturated air lies within 1 % of
 * density, so that no measured density tells the humidity.
 */
public final class MoistAirState {
    private static final Source HANDBOOK =
            Source.fromMemory("ASHRAE Fundamentals ch. 1, Psychrometrics (saturation after Hyland and Wexler 1983)");
    private static final String DRY_BULB = "dryBulbC";
    private static final String RELATIVE_HUMIDITY = "relativeHumidityFraction";
    private static final String WET_BULB = "wetBulbC";
    private static final String DEW_POINT = "dewPointC";
    private static final String HUMIDITY_RATIO = "humidityRatioKgPerKg";
    private static final String ENTHALPY = "enthalpyJPerKg";
    private static final String VAPOUR_PRESSURE = "vapourPressurePa";
    private static final String AT_THIS_DRY_BULB = "At this dry bulb it can only be ";

    /** Room for rounding where a given quantity stands exactly at saturation. */
    private static final double AT_SATURATION = 1 + 1e-9;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "moist-air-state", "1.0", "Moist air state", Input.class, Output.class)
            .purpose("Gives every property of moist air from two of them and the pressure.")
            .equation("over ice: ln pws = C1/T + C2 + C3·T + C4·T² + C5·T³ + C6·T⁴ + C7·ln T", HANDBOOK)
            .equation("over water: ln pws = C8/T + C9 + C10·T + C11·T² + C12·T³ + C13·ln T", HANDBOOK)
            .equation("W = 0.621945·pw/(p − pw)", HANDBOOK)
            .equation("φ = pw/pws(t)", HANDBOOK)
            .equation("h = 1.006·t + W·(2501 + 1.86·t), kJ/kg", HANDBOOK)
            .equation("v = 287.042·(t + 273.15)·(1 + 1.607858·W)/p;  ρ = (1 + W)/v", HANDBOOK)
            .equation("td: pws(td) = pw", HANDBOOK)
            .equation("t* ≥ 0: W = [(2501 − 2.326·t*)·Ws* − 1.006·(t − t*)]/(2501 + 1.86·t − 4.186·t*)", HANDBOOK)
            .equation("t* < 0: W = [(2830 − 0.24·t*)·Ws* − 1.006·(t − t*)]/(2830 + 1.86·t − 2.1·t*)", HANDBOOK)
            .equation(
                    "branch of t*: water where the water form at t* = 0 gives a W not above the actual one, else ice",
                    Source.proposed("rule for the gap between the two forms"))
            .equation("p = 101325·(1 − 2.25577e-5·Z)^5.2559 where an altitude is given", HANDBOOK)
            .source(HANDBOOK)
            .source(Source.fromMemory("WMO-No. 8, Guide to Instruments and Methods of Observation, part I ch. 4"))
            .caution(new Caution(
                    "Mould",
                    "This is the state of the air, not of a surface. A colder surface in the same air is damper and may"
                            + " grow mould or collect water while the air reads dry."))
            .validation(
                    "Tables 1 to 3 and example 1 of ASHRAE Fundamentals 2017 ch. 1, as an open library's tests quote"
                            + " them, and ten states computed by that library and by independent code.")
            .by(MoistAirState::compute);

    private MoistAirState() {}

    /** Exactly two of the seven quantities, exactly one of pressure and altitude. */
    public record Input(
            @Quantity(
                    label = "Dry bulb",
                    symbol = "t",
                    unit = Unit.CELSIUS,
                    min = Ranges.COLDEST_C,
                    max = Ranges.HOTTEST_C,
                    limitSource = Ranges.TABLES,
                    advisedMin = -40,
                    advisedMax = 60,
                    advisedSource = Ranges.IDEAL_MIXTURE,
                    help = "Air temperature. Fill in any two of the first seven.")
            @Nullable
            Double dryBulbC,

            @Quantity(
                    label = "Relative humidity",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0,
                    minExclusive = true,
                    max = 1,
                    limitSource = "dry air has no dew point; above saturation it is fog",
                    help = "Below freezing it is counted against what you choose further down.")
            @Nullable
            Double relativeHumidityFraction,

            @Quantity(
                    label = "Wet bulb",
                    symbol = "t*",
                    unit = Unit.CELSIUS,
                    min = Ranges.COLDEST_C,
                    max = Ranges.HOTTEST_C,
                    limitSource = Ranges.TABLES,
                    help = "Below 0 °C the bulb is taken as iced.")
            @Nullable
            Double wetBulbC,

            @Quantity(
                    label = "Dew point",
                    symbol = "td",
                    unit = Unit.CELSIUS,
                    min = Ranges.DRIEST_DEW_POINT_C,
                    max = Ranges.HOTTEST_C,
                    limitSource = Ranges.SATURATION,
                    help = "Below freezing the frost point, unless humidity is counted over water.")
            @Nullable
            Double dewPointC,

            @Quantity(
                    label = "Humidity ratio",
                    symbol = "W",
                    unit = Unit.KILOGRAM_PER_KILOGRAM,
                    min = 0,
                    minExclusive = true,
                    max = 1.5,
                    limitSource = "saturated air at 90 °C and sea level holds 1.4 kg/kg, computed",
                    help = "Vapour per dry air.")
            @Nullable
            Double humidityRatioKgPerKg,

            @Quantity(
                    label = "Enthalpy",
                    symbol = "h",
                    unit = Unit.JOULE_PER_KILOGRAM,
                    min = -61_000,
                    max = 4_000_000,
                    limitSource = "dry air at −60 °C to saturated air at 90 °C and sea level, computed",
                    help = "Per dry air, counted from dry air and liquid water at 0 °C.")
            @Nullable
            Double enthalpyJPerKg,

            @Quantity(
                    label = "Vapour pressure",
                    symbol = "pw",
                    unit = Unit.PASCAL,
                    min = 0,
                    minExclusive = true,
                    max = 70_200,
                    limitSource = "saturation at 90 °C is 70.2 kPa, computed")
            @Nullable
            Double vapourPressurePa,

            @Quantity(
                    label = "Air pressure",
                    symbol = "p",
                    unit = Unit.AIR_PASCAL,
                    min = Ranges.LEAST_PRESSURE_PA,
                    max = Ranges.GREATEST_PRESSURE_PA,
                    limitSource = Ranges.ATMOSPHERE,
                    help =
                            "As a barometer on the spot shows it, not reduced to sea level. Fill in this or the altitude.")
            @Nullable
            Double pressurePa,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = Ranges.LOWEST_ALTITUDE_M,
                    max = Ranges.HIGHEST_ALTITUDE_M,
                    limitSource = Ranges.ATMOSPHERE,
                    help = "Stands in for the air pressure.")
            @Nullable
            Double altitudeM,

            @Entry(
                    label = "Below freezing, humidity is counted",
                    help = "Weather services count over water; handbook tables and most building readings over ice.")
            BelowFreezing belowFreezing) {}

    /** Every property of the state. */
    public record Output(
            @Quantity(label = "Dry bulb", symbol = "t", unit = Unit.CELSIUS, step = 0.1, leading = true)
            double dryBulbC,

            @Quantity(label = "Relative humidity", symbol = "φ", unit = Unit.FRACTION, step = 0.001, leading = true)
            double relativeHumidityFraction,

            @Quantity(label = "Wet bulb", symbol = "t*", unit = Unit.CELSIUS, step = 0.1, leading = true)
            double wetBulbC,

            @Quantity(label = "Dew point", symbol = "td", unit = Unit.CELSIUS, step = 0.1, leading = true)
            double dewPointC,

            @Quantity(
                    label = "Humidity ratio",
                    symbol = "W",
                    unit = Unit.KILOGRAM_PER_KILOGRAM,
                    step = 1e-5,
                    leading = true)
            double humidityRatioKgPerKg,

            @Quantity(label = "Enthalpy", symbol = "h", unit = Unit.JOULE_PER_KILOGRAM, step = 10, leading = true)
            double enthalpyJPerKg,

            @Quantity(label = "Vapour pressure", symbol = "pw", unit = Unit.PASCAL, step = 0.1)
            double vapourPressurePa,

            @Quantity(label = "Saturation pressure", symbol = "pws", unit = Unit.PASCAL, step = 0.1)
            double saturationPressurePa,

            @Quantity(label = "Volume per dry air", symbol = "v", unit = Unit.CUBIC_METRE_PER_KILOGRAM, step = 1e-4)
            double volumeM3PerKg,

            @Quantity(
                    label = "Density",
                    symbol = "ρ",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 1e-4,
                    leading = true)
            double densityKgPerM3,

            @Quantity(
                    label = "Vapour per volume of air",
                    symbol = "ρv",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 1e-5)
            double vapourDensityKgPerM3,

            @Quantity(label = "Air pressure", symbol = "p", unit = Unit.AIR_PASCAL, step = 10)
            double pressurePa,

            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        return new Given(PlacePressure.pressurePa(in.pressurePa(), in.altitudeM()), in.belowFreezing(), given(in))
                .output();
    }

    /** The two given quantities in the order of the form. */
    private static Map<String, Double> given(Input in) {
        Map<String, Double> given = new LinkedHashMap<>();
        put(given, DRY_BULB, in.dryBulbC());
        put(given, RELATIVE_HUMIDITY, in.relativeHumidityFraction());
        put(given, WET_BULB, in.wetBulbC());
        put(given, DEW_POINT, in.dewPointC());
        put(given, HUMIDITY_RATIO, in.humidityRatioKgPerKg());
        put(given, ENTHALPY, in.enthalpyJPerKg());
        put(given, VAPOUR_PRESSURE, in.vapourPressurePa());
        if (given.isEmpty()) {
            throw refused(DRY_BULB, "", "Two quantities fix a state; none is given.");
        }
        if (given.size() != 2) {
            Map.Entry<String, Double> last = last(given);
            throw refused(
                    last.getKey(),
                    text(last.getValue()),
                    "Two quantities fix a state; " + given.size() + " are given: " + String.join(", ", given.keySet())
                            + ".");
        }
        return given;
    }

    private static void put(Map<String, Double> given, String name, @Nullable Double value) {
        if (value != null) {
            given.put(name, value);
        }
    }

    private static Map.Entry<String, Double> last(Map<String, Double> given) {
        return List.copyOf(given.entrySet()).get(given.size() - 1);
    }

    private static Refused refused(String field, String value, String sentence) {
        return Refused.of(field, value, sentence, HANDBOOK);
    }

    /** The two given quantities, the pressure, and the way to the state. */
    private static final class Given {
        private final double p;
        private final BelowFreezing convention;
        private final Map<String, Double> given;

        Given(double p, BelowFreezing convention, Map<String, Double> given) {
            this.p = p;
            this.convention = convention;
            this.given = given;
        }

        private boolean has(String name) {
            return given.containsKey(name);
        }

        private double value(String name) {
            Double value = given.get(name);
            if (value == null) {
                throw new IllegalStateException(name + " is not given");
            }
            return value;
        }

        private double saturation(double t) {
            return MoistAir.saturationPressurePa(t, convention);
        }

        Output output() {
            List<String> carriers = given.keySet().stream()
                    .filter(List.of(DEW_POINT, HUMIDITY_RATIO, VAPOUR_PRESSURE)::contains)
                    .toList();
            if (carriers.size() == 2) {
                throw refusedAs(
                        carriers.get(1),
                        "At a given pressure " + carriers.get(0) + " and " + carriers.get(1)
                                + " say the same thing; give another quantity with one of them.");
            }
            if (has(WET_BULB) && has(ENTHALPY)) {
                throw refusedAs(
                        ENTHALPY,
                        "Wet bulb and enthalpy do not fix a state: they run almost side by side. Give another quantity"
                                + " with one of them.");
            }
            if (!carriers.isEmpty()) {
                double vapour = vapourPressure(carriers.get(0));
                double w = MoistAir.humidityRatio(vapour, p);
                return has(DRY_BULB) ? checked(value(DRY_BULB), w) : output(dryBulbOf(vapour, w), w);
            }
            return has(DRY_BULB) ? fromDryBulb(value(DRY_BULB)) : fromRelativeHumidity(value(RELATIVE_HUMIDITY));
        }

        private double vapourPressure(String carrier) {
            double vapour = switch (carrier) {
                case DEW_POINT -> saturation(value(DEW_POINT));
                case HUMIDITY_RATIO -> MoistAir.vapourPressurePa(value(HUMIDITY_RATIO), p);
                default -> value(VAPOUR_PRESSURE);
            };
            if (!(vapour < p)) {
                throw refusedAs(
                        carrier,
                        "The vapour pressure would reach the air pressure of " + shown(p) + " Pa: no air is left.");
            }
            return vapour;
        }

        private Output fromDryBulb(double t) {
            if (has(WET_BULB)) {
                return checked(t, MoistAir.humidityRatioFromWetBulb(t, value(WET_BULB), p));
            }
            if (has(ENTHALPY)) {
                return checked(t, MoistAir.humidityRatioFromEnthalpy(t, value(ENTHALPY)));
            }
            double vapour = value(RELATIVE_HUMIDITY) * saturation(t);
            if (!(vapour < p)) {
                throw outside(RELATIVE_HUMIDITY, AT_THIS_DRY_BULB, 0, p / saturation(t));
            }
            return output(t, MoistAir.humidityRatio(vapour, p));
        }

        /** Refuses a second quantity that no air of this dry bulb has. */
        private Output checked(double t, double w) {
            double saturation = saturation(t);
            double greatest = saturation < p ? MoistAir.humidityRatio(saturation, p) : Double.POSITIVE_INFINITY;
            if (w > 0 && w <= greatest * AT_SATURATION) {
                return output(t, w);
            }
            String field = last(given).getKey();
            throw switch (field) {
                case DEW_POINT -> outside(field, AT_THIS_DRY_BULB, Ranges.DRIEST_DEW_POINT_C, t);
                case HUMIDITY_RATIO -> outside(field, AT_THIS_DRY_BULB, 0, greatest);
                case VAPOUR_PRESSURE -> outside(field, AT_THIS_DRY_BULB, 0, saturation);
                case WET_BULB ->
                    outside(
                            field,
                            AT_THIS_DRY_BULB,
                            MoistAir.wetBulbC(t, 0, p),
                            saturation < p ? MoistAir.wetBulbC(t, greatest, p) : t);
                default ->
                    outside(
                            field,
                            AT_THIS_DRY_BULB,
                            MoistAir.enthalpyJPerKg(t, 0),
                            MoistAir.enthalpyJPerKg(t, greatest));
            };
        }

        /** The dry bulb from the vapour and the other quantity. */
        private double dryBulbOf(double vapour, double w) {
            if (has(RELATIVE_HUMIDITY)) {
                double saturation = vapour / value(RELATIVE_HUMIDITY);
                return saturation > MoistAir.saturationPressurePa(Ranges.HOTTEST_C)
                        ? Double.POSITIVE_INFINITY
                        : MoistAir.dewPointC(saturation, convention);
            }
            double dewPoint = MoistAir.dewPointC(vapour, convention);
            boolean wet = has(WET_BULB);
            double t = wet
                    ? MoistAir.dryBulbFromWetBulbC(value(WET_BULB), w, p)
                    : MoistAir.dryBulbFromEnthalpyC(value(ENTHALPY), w);
            if (t < Ranges.COLDEST_C || !(vapour <= saturation(t) * AT_SATURATION)) {
                throw outside(
                        wet ? WET_BULB : ENTHALPY,
                        "With so much vapour it can only be ",
                        wet ? dewPoint : MoistAir.enthalpyJPerKg(dewPoint, w),
                        Double.POSITIVE_INFINITY);
            }
            return t;
        }

        private Output fromRelativeHumidity(double phi) {
            DoubleUnaryOperator humidityRatio = t -> MoistAir.humidityRatio(phi * saturation(t), p);
            DoubleUnaryOperator excess = has(WET_BULB)
                    ? t -> humidityRatio.applyAsDouble(t) - MoistAir.humidityRatioFromWetBulb(t, value(WET_BULB), p)
                    : t -> MoistAir.enthalpyJPerKg(t, humidityRatio.applyAsDouble(t)) - value(ENTHALPY);
            // counted over water the air may be above saturation over ice, and then colder than its iced bulb
            double coldest = has(WET_BULB) ? value(WET_BULB) - 10 : Ranges.COLDEST_C;
            double boiling = 0.999 * p / phi;
            double hottest = boiling < MoistAir.saturationPressureOverWaterPa(Ranges.HOTTEST_C)
                    ? MoistAir.dewPointC(boiling, BelowFreezing.OVER_WATER)
                    : Ranges.HOTTEST_C;
            if (!(coldest < hottest) || excess.applyAsDouble(coldest) > 0 || excess.applyAsDouble(hottest) < 0) {
                throw noDryBulb();
            }
            double t = Roots.bracketed(excess, coldest, hottest, 1e-10);
            return output(t, humidityRatio.applyAsDouble(t));
        }

        private Output output(double t, double w) {
            if (!(t >= Ranges.COLDEST_C && t <= Ranges.HOTTEST_C)) {
                throw noDryBulb();
            }
            double vapour = MoistAir.vapourPressurePa(w, p);
            double dewPoint = MoistAir.dewPointC(vapour, convention);
            if (dewPoint < Ranges.DRIEST_DEW_POINT_C) {
                throw refusedAs(
                        last(given).getKey(),
                        "The air would be so dry that its dew point lies below −100 °C, where the saturation equation"
                                + " ends.");
            }
            // the two forms of the wet bulb overlap near 0 °C: a bulb that was read stays as it was read
            double wetBulb = has(WET_BULB) ? value(WET_BULB) : MoistAir.wetBulbC(t, w, p);
            double volume = MoistAir.volumeM3PerKg(t, w, p);
            return new Output(
                    t,
                    vapour / saturation(t),
                    wetBulb,
                    dewPoint,
                    w,
                    MoistAir.enthalpyJPerKg(t, w),
                    vapour,
                    saturation(t),
                    volume,
                    (1 + w) / volume,
                    w / volume,
                    p,
                    notices(t, vapour, dewPoint, wetBulb));
        }

        private List<Notice> notices(double t, double vapour, double dewPoint, double wetBulb) {
            List<Notice> notices = new ArrayList<>();
            if (t < 0 || dewPoint < 0) {
                boolean overIce = convention == BelowFreezing.OVER_ICE;
                BelowFreezing other = overIce ? BelowFreezing.OVER_WATER : BelowFreezing.OVER_ICE;
                String humidity = t < 0
                        ? String.format(
                                Locale.ROOT,
                                "relative humidity %.1f %% and ",
                                100 * vapour / MoistAir.saturationPressurePa(t, other))
                        : "";
                notices.add(Notice.note(
                        "other-surface",
                        t < 0 ? RELATIVE_HUMIDITY : DEW_POINT,
                        String.format(
                                Locale.ROOT,
                                "Counted over %s the same air has %sdew point %.2f °C.",
                                overIce ? "water" : "ice",
                                humidity,
                                MoistAir.dewPointC(vapour, other)),
                        Source.fromMemory("WMO-No. 8, part I ch. 4")));
            }
            if (wetBulb > t + 1e-6) {
                notices.add(Notice.note(
                        "above-ice-saturation",
                        WET_BULB,
                        "The air holds more vapour than saturation over ice: frost grows on the bulb and keeps it above"
                                + " the dry bulb.",
                        HANDBOOK));
            }
            return List.copyOf(notices);
        }

        private Refused noDryBulb() {
            return refusedAs(
                    last(given).getKey(), "These two would meet at a dry bulb outside −60 to 90 °C, or nowhere.");
        }

        private Refused refusedAs(String field, String sentence) {
            return refused(field, text(value(field)), sentence);
        }

        private Refused outside(String field, String sentence, double low, double high) {
            String unit = switch (field) {
                case ENTHALPY -> "J/kg";
                case HUMIDITY_RATIO -> "kg/kg";
                case VAPOUR_PRESSURE -> "Pa";
                case RELATIVE_HUMIDITY -> "1";
                default -> "Cel";
            };
            boolean bounded = high < Double.POSITIVE_INFINITY;
            String range = bounded ? shown(low) + " to " + shown(high) : "at least " + shown(low);
            return new Refused(new Violation(
                    field,
                    text(value(field)),
                    low,
                    bounded ? high : null,
                    unit,
                    HANDBOOK.printed(),
                    field + " = " + shown(value(field)) + ". " + sentence + range
                            + (unit.equals("1") ? "." : " " + unit + ".")));
        }

        /** Five significant digits: a range is there to be read. */
        private static String shown(double value) {
            return new BigDecimal(value)
                    .round(new MathContext(5))
                    .stripTrailingZeros()
                    .toPlainString();
        }
    }
}
