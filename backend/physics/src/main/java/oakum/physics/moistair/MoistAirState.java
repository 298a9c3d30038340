package oakum.physics.moistair;

import static oakum.physics.calculation.Canonical.text;

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
    private static final String COMFORT_RANGE =
            "ASHRAE Fundamentals ch. 1: the ideal-mixture equations hold from −40 to 60 °C, from memory";
    private static final String SATURATION_RANGE =
            "ASHRAE Fundamentals ch. 1, saturation pressure over ice from −100 °C, from memory";

    private static final double DRIEST_DEW_POINT_C = -100;

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
                    advisedSource = COMFORT_RANGE,
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
                    min = DRIEST_DEW_POINT_C,
                    max = Ranges.HOTTEST_C,
                    limitSource = SATURATION_RANGE,
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
        double p = pressure(in);
        Map<String, Double> given = given(in);
        Given g = new Given(in, p, given);
        double[] state = g.solve();
        return g.output(state[0], state[1]);
    }

    private static double pressure(Input in) {
        if (in.pressurePa() != null && in.altitudeM() != null) {
            throw refused(
                    "altitudeM",
                    in.altitudeM(),
                    "Air pressure and altitude are both given; one of them says it: leave the other out.");
        }
        if (in.pressurePa() != null) {
            return in.pressurePa();
        }
        if (in.altitudeM() != null) {
            return StandardAtmosphere.pressurePa(in.altitudeM());
        }
        throw refused("pressurePa", "", "Give the air pressure, or the altitude in its place.");
    }

    /** The two given quantities in the order of the form. */
    private static Map<String, Double> given(Input in) {
        Map<String, Double> given = new LinkedHashMap<>();
        put(given, "dryBulbC", in.dryBulbC());
        put(given, "relativeHumidityFraction", in.relativeHumidityFraction());
        put(given, "wetBulbC", in.wetBulbC());
        put(given, "dewPointC", in.dewPointC());
        put(given, "humidityRatioKgPerKg", in.humidityRatioKgPerKg());
        put(given, "enthalpyJPerKg", in.enthalpyJPerKg());
        put(given, "vapourPressurePa", in.vapourPressurePa());
        if (given.size() != 2) {
            List<String> names = new ArrayList<>(given.keySet());
            String field = names.isEmpty() ? "dryBulbC" : names.get(names.size() - 1);
            throw refused(
                    field,
                    names.isEmpty() ? "" : given.get(field),
                    "Two quantities fix a state; " + given.size() + " are given"
                            + (names.isEmpty() ? "." : ": " + String.join(", ", names) + "."));
        }
        return given;
    }

    private static void put(Map<String, Double> given, String name, @Nullable Double value) {
        if (value != null) {
            given.put(name, value);
        }
    }

    private static Refused refused(String field, Object value, String sentence) {
        return new Refused(Violation.of(
                field, value instanceof Double number ? text(number) : value, sentence, HANDBOOK.printed()));
    }

    /** The two given quantities, the pressure and the way to the state. */
    private static final class Given {
        private final Input in;
        private final double p;
        private final Map<String, Double> given;
        private final BelowFreezing convention;

        Given(Input in, double p, Map<String, Double> given) {
            this.in = in;
            this.p = p;
            this.given = given;
            this.convention = in.belowFreezing();
        }

        /** Dry bulb and humidity ratio. */
        double[] solve() {
            Double vapour = vapourPressure();
            double[] state;
            if (in.dryBulbC() != null) {
                state = fromDryBulb(in.dryBulbC(), vapour);
            } else if (vapour != null) {
                state = fromVapour(MoistAir.humidityRatio(vapour, p), vapour);
            } else if (in.relativeHumidityFraction() != null) {
                state = fromRelativeHumidity(in.relativeHumidityFraction());
            } else {
                throw refused(
                        "enthalpyJPerKg",
                        given.get("enthalpyJPerKg"),
                        "Wet bulb and enthalpy do not fix a state: they run almost side by side. Give another quantity"
                                + " with one of them.");
            }
            if (!(state[0] >= Ranges.COLDEST_C && state[0] <= Ranges.HOTTEST_C)) {
                throw outside(
                        second(),
                        "These two would meet at a dry bulb outside ",
                        Ranges.COLDEST_C,
                        Ranges.HOTTEST_C,
                        "Cel");
            }
            return state;
        }

        /** The vapour pressure where one of the three quantities that carry it is given. */
        private @Nullable Double vapourPressure() {
            List<String> carriers = given.keySet().stream()
                    .filter(List.of("dewPointC", "humidityRatioKgPerKg", "vapourPressurePa")::contains)
                    .toList();
            if (carriers.isEmpty()) {
                return null;
            }
            String name = carriers.get(0);
            if (carriers.size() == 2) {
                throw refused(
                        carriers.get(1),
                        given.get(carriers.get(1)),
                        "At a given pressure " + name + " and " + carriers.get(1)
                                + " say the same thing; give another quantity with one of them.");
            }
            double vapour;
            if (in.dewPointC() != null) {
                vapour = MoistAir.saturationPressurePa(in.dewPointC(), convention);
            } else if (in.humidityRatioKgPerKg() != null) {
                vapour = MoistAir.vapourPressurePa(in.humidityRatioKgPerKg(), p);
            } else {
                vapour = in.vapourPressurePa() == null ? Double.NaN : in.vapourPressurePa();
            }
            if (!(vapour < p)) {
                throw refused(
                        name,
                        given.get(name),
                        "The vapour pressure would reach the air pressure of " + text(Math.round(p))
                                + " Pa: no air is left.");
            }
            return vapour;
        }

        private double[] fromDryBulb(double t, @Nullable Double vapour) {
            double saturation = MoistAir.saturationPressurePa(t, convention);
            if (in.relativeHumidityFraction() != null) {
                double pw = in.relativeHumidityFraction() * saturation;
                if (!(pw < p)) {
                    throw outside(
                            "relativeHumidityFraction", "At this dry bulb it can only be ", 0, p / saturation, "1");
                }
                return new double[] {t, MoistAir.humidityRatio(pw, p)};
            }
            double greatest = saturation < p ? MoistAir.humidityRatio(saturation, p) : Double.POSITIVE_INFINITY;
            double w;
            double low;
            double high;
            if (vapour != null) {
                w = MoistAir.humidityRatio(vapour, p);
                low = in.dewPointC() != null ? DRIEST_DEW_POINT_C : 0;
                high = in.dewPointC() != null ? t : in.humidityRatioKgPerKg() != null ? greatest : saturation;
            } else if (in.wetBulbC() != null) {
                w = MoistAir.humidityRatioFromWetBulb(t, in.wetBulbC(), p);
                low = MoistAir.wetBulbC(t, 0, p);
                high = greatest < Double.POSITIVE_INFINITY ? MoistAir.wetBulbC(t, greatest, p) : t;
            } else {
                w = MoistAir.humidityRatioFromEnthalpy(t, given.get("enthalpyJPerKg"));
                low = MoistAir.enthalpyJPerKg(t, 0);
                high = MoistAir.enthalpyJPerKg(t, greatest);
            }
            if (!(w > 0 && w <= greatest * AT_SATURATION)) {
                throw outside(second(), "At this dry bulb it can only be ", low, high, unit(second()));
            }
            return new double[] {t, w};
        }

        private double[] fromVapour(double w, double vapour) {
            if (in.relativeHumidityFraction() != null) {
                double saturation = vapour / in.relativeHumidityFraction();
                return new double[] {
                    saturation > MoistAir.saturationPressurePa(Ranges.HOTTEST_C)
                            ? Double.POSITIVE_INFINITY
                            : MoistAir.dewPointC(saturation, convention),
                    w
                };
            }
            double dewPoint = MoistAir.dewPointC(vapour, convention);
            if (in.wetBulbC() != null) {
                double bulb = in.wetBulbC();
                double t = MoistAir.dryBulbFromWetBulbC(bulb, w, p);
                requireNotFog(t, vapour, "wetBulbC", dewPoint);
                return new double[] {t, w};
            }
            double t = MoistAir.dryBulbFromEnthalpyC(given.get("enthalpyJPerKg"), w);
            requireNotFog(t, vapour, "enthalpyJPerKg", MoistAir.enthalpyJPerKg(dewPoint, w));
            return new double[] {t, w};
        }

        private void requireNotFog(double t, double vapour, String field, double least) {
            if (t < Ranges.COLDEST_C || !(vapour <= MoistAir.saturationPressurePa(t, convention) * AT_SATURATION)) {
                throw outside(
                        field, "With so much vapour it can only be ", least, Double.POSITIVE_INFINITY, unit(field));
            }
        }

        private double[] fromRelativeHumidity(double phi) {
            double hottest = Math.min(Ranges.HOTTEST_C, MoistAir.dewPointC(0.999 * p / phi, BelowFreezing.OVER_WATER));
            boolean wet = in.wetBulbC() != null;
            double bulb = wet ? in.wetBulbC() : 0;
            double enthalpy = wet ? 0 : given.get("enthalpyJPerKg");
            DoubleUnaryOperator f = t -> {
                double w = MoistAir.humidityRatio(phi * MoistAir.saturationPressurePa(t, convention), p);
                return wet
                        ? w - MoistAir.humidityRatioFromWetBulb(t, bulb, p)
                        : MoistAir.enthalpyJPerKg(t, w) - enthalpy;
            };
            double coldest = wet ? Math.max(bulb - 10, DRIEST_DEW_POINT_C) : Ranges.COLDEST_C;
            if (!(coldest < hottest) || f.applyAsDouble(coldest) > 0 || f.applyAsDouble(hottest) < 0) {
                return new double[] {Double.NaN, Double.NaN};
            }
            double t = Roots.bracketed(f, coldest, hottest, 1e-10);
            return new double[] {t, MoistAir.humidityRatio(phi * MoistAir.saturationPressurePa(t, convention), p)};
        }

        /** The given quantity that a refusal names: the later of the two. */
        private String second() {
            return List.copyOf(given.keySet()).get(1);
        }

        private Refused outside(String field, String sentence, double low, double high, String unit) {
            Double value = given.get(field);
            String end = unit.equals("1") ? "" : " " + unit;
            String range =
                    high < Double.POSITIVE_INFINITY ? shown(low) + " to " + shown(high) : "at least " + shown(low);
            return new Refused(new Violation(
                    field,
                    value == null ? "" : text(value),
                    low,
                    high < Double.POSITIVE_INFINITY ? high : null,
                    unit,
                    HANDBOOK.printed(),
                    field + " = " + (value == null ? "" : text(value)) + end + ". " + sentence + range + end + "."));
        }

        private static String shown(double value) {
            double digits = Math.pow(10, 4 - Math.ceil(Math.log10(Math.max(1e-6, Math.abs(value)))));
            return text(Math.round(value * digits) / digits);
        }

        private static String unit(String field) {
            return switch (field) {
                case "enthalpyJPerKg" -> "J/kg";
                case "humidityRatioKgPerKg" -> "kg/kg";
                case "vapourPressurePa" -> "Pa";
                case "relativeHumidityFraction" -> "1";
                default -> "Cel";
            };
        }

        Output output(double t, double w) {
            double vapour = MoistAir.vapourPressurePa(w, p);
            double saturation = MoistAir.saturationPressurePa(t, convention);
            double dewPoint = MoistAir.dewPointC(vapour, convention);
            if (dewPoint < DRIEST_DEW_POINT_C) {
                throw refused(
                        second(),
                        given.get(second()),
                        "The air would be so dry that its dew point lies below −100 °C, where the saturation equation"
                                + " ends.");
            }
            // the two forms of the wet bulb overlap near 0 °C: a bulb that was read stays as it was read
            double wetBulb = in.wetBulbC() != null ? in.wetBulbC() : MoistAir.wetBulbC(t, w, p);
            double volume = MoistAir.volumeM3PerKg(t, w, p);
            return new Output(
                    t,
                    vapour / saturation,
                    wetBulb,
                    dewPoint,
                    w,
                    MoistAir.enthalpyJPerKg(t, w),
                    vapour,
                    saturation,
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
                String what = t < 0
                        ? String.format(
                                Locale.ROOT,
                                "relative humidity %.1f %% and dew point %.2f °C",
                                100 * vapour / MoistAir.saturationPressurePa(t, other),
                                MoistAir.dewPointC(vapour, other))
                        : String.format(Locale.ROOT, "dew point %.2f °C", MoistAir.dewPointC(vapour, other));
                notices.add(Notice.note(
                        "other-surface",
                        t < 0 ? "relativeHumidityFraction" : "dewPointC",
                        "Counted over " + (overIce ? "water" : "ice") + " the same air has " + what + ".",
                        Source.fromMemory("WMO-No. 8, part I ch. 4")));
            }
            if (wetBulb > t + 1e-6) {
                notices.add(Notice.note(
                        "above-ice-saturation",
                        "wetBulbC",
                        "The air holds more vapour than saturation over ice: frost grows on the bulb and keeps it above"
                                + " the dry bulb.",
                        HANDBOOK));
            }
            return List.copyOf(notices);
        }
    }
}
