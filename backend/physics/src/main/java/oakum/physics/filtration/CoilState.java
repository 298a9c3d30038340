package oakum.physics.filtration;

import java.util.ArrayList;
import java.util.List;
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
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import oakum.physics.numerics.Roots;

/**
 * Air leaving a cooling coil, by the bypass model: a share of the air misses the coil, the rest leaves saturated at the
 * temperature of the wet metal, or at the metal's temperature where nothing condenses.
 */
public final class CoilState {
    private static final Source BYPASS_MODEL =
            Source.commonPractice("bypass-factor model of a cooling coil, as in ASHRAE Systems and Equipment");
    private static final Source ICING = Source.proposed("ice from 0 °C of the surface, warned below 2 °C");
    private static final double COLDEST_SURFACE_C = -60;
    private static final double ICE_C = 0;
    private static final double ICE_WARNING_C = 2;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "coil-state", "1.0", "Air leaving a cooling coil", Input.class, Output.class)
            .purpose("Gives temperature, humidity and condensate behind a cooling coil, and whether it may ice up.")
            .equation("m = Q/v;  h2 = h1 − q/m", BYPASS_MODEL)
            .equation("h_s = h1 − (h1 − h2)/(1 − BF);  T_s on the saturation curve at h_s", BYPASS_MODEL)
            .equation(
                    "wet: T2 = T_s + BF·(T1 − T_s);  W2 = W_s + BF·(W1 − W_s);  condensate = m·(W1 − W2)", BYPASS_MODEL)
            .equation(
                    "dry, where T_s is not below the entering dew point: W2 = W1;  T2 = (h2 − 2501·W1)/(1.006 + 1.86·W1);"
                            + "  T_s = T1 − (T1 − T2)/(1 − BF)",
                    BYPASS_MODEL)
            .source(BYPASS_MODEL)
            .source(ICING)
            .caution(new Caution(
                    "Refrigerant",
                    "A coil that ices up can flood the compressor with liquid refrigerant. Work on the refrigerant circuit"
                            + " is for licensed technicians; here only air is computed."))
            .caution(new Caution(
                    "Mould",
                    "A wet coil and its pan grow mould where they do not drain and dry. A filter before the coil that lets"
                            + " air past feeds it."))
            .validation("Four states computed by independent code, three wet and one dry; no published example found.")
            .by(CoilState::compute);

    private CoilState() {}

    /** The entering air and what the coil takes out of it. */
    public record Input(
            @Quantity(
                    label = "Airflow over the coil",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    minExclusive = true,
                    max = 50,
                    limitSource = "some air must flow",
                    help = "Volume at the state of the entering air.")
            double airflowM3PerS,

            @Quantity(
                    label = "Temperature before the coil",
                    symbol = "T1",
                    unit = Unit.CELSIUS,
                    min = -20,
                    max = 60,
                    limitSource = "ASHRAE Fundamentals ch. 1: the ideal-mixture equations hold to 60 °C, from memory")
            double enteringC,

            @Quantity(
                    label = "Relative humidity before the coil",
                    symbol = "φ1",
                    unit = Unit.FRACTION,
                    min = 0,
                    minExclusive = true,
                    max = 1,
                    limitSource = "dry air has no dew point; above saturation it is fog")
            double enteringHumidityFraction,

            @Quantity(
                    label = "Heat taken out",
                    symbol = "q",
                    unit = Unit.WATT,
                    min = 0,
                    max = 1e6,
                    limitSource = "a cooling coil takes heat out",
                    help = "Total, sensible and latent. It really falls with the airflow; taken as given here.")
            double coolingW,

            @Quantity(
                    label = "Bypass factor",
                    symbol = "BF",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 0.9,
                    limitSource = "a coil that nearly all air misses is none",
                    advisedMin = 0.05,
                    advisedMax = 0.3,
                    advisedSource = "usual coils of two to six rows, common practice",
                    help = "Share of the air that misses the coil; 10 % is usual.")
            double bypassFraction,

            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = -500,
                    max = 5000,
                    limitSource = "inhabited places")
            double altitudeM) {}

    /** The leaving air. */
    public record Output(
            @Quantity(label = "Dry-air flow", symbol = "m", unit = Unit.KILOGRAM_PER_SECOND, step = 0.0001)
            double dryAirKgPerS,

            @Quantity(label = "Enthalpy before", symbol = "h1", unit = Unit.JOULE_PER_KILOGRAM, step = 10)
            double enteringJPerKg,

            @Quantity(label = "Enthalpy behind", symbol = "h2", unit = Unit.JOULE_PER_KILOGRAM, step = 10)
            double leavingJPerKg,

            @Quantity(label = "Surface of the coil", symbol = "T_s", unit = Unit.CELSIUS, step = 0.1, leading = true)
            double surfaceC,

            @Quantity(
                    label = "Temperature behind the coil",
                    symbol = "T2",
                    unit = Unit.CELSIUS,
                    step = 0.1,
                    leading = true)
            double leavingC,

            @Quantity(
                    label = "Humidity ratio behind the coil",
                    symbol = "W2",
                    unit = Unit.KILOGRAM_PER_KILOGRAM,
                    step = 0.00001)
            double leavingKgPerKg,

            @Quantity(label = "Condensate", unit = Unit.KILOGRAM_PER_HOUR, step = 0.01, leading = true)
            double condensateKgPerH,

            @Quantity(label = "Dew point before the coil", unit = Unit.CELSIUS, step = 0.1)
            double enteringDewPointC,

            @Quantity(label = "Surface if it were wet", unit = Unit.CELSIUS, step = 0.1)
            double wetSurfaceC,

            @Entry(label = "Water condenses") boolean wet,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        double pressure = StandardAtmosphere.pressurePa(in.altitudeM());
        double t1 = in.enteringC();
        double w1 = MoistAir.humidityRatio(t1, in.enteringHumidityFraction(), pressure);
        double dewPoint = MoistAir.dewPointC(MoistAir.vapourPressurePa(w1, pressure));
        double m = in.airflowM3PerS() / MoistAir.volumeM3PerKg(t1, w1, pressure);
        double h1 = MoistAir.enthalpyJPerKg(t1, w1);
        double h2 = h1 - in.coolingW() / m;
        double bypass = in.bypassFraction();
        double wetSurface = saturatedAtC(h1 - (h1 - h2) / (1 - bypass), t1, pressure, in);
        boolean wet = wetSurface < dewPoint;
        double t2;
        double w2;
        double surface;
        if (wet) {
            surface = wetSurface;
            t2 = surface + bypass * (t1 - surface);
            double ws = MoistAir.saturatedHumidityRatio(surface, pressure);
            w2 = ws + bypass * (w1 - ws);
        } else {
            w2 = w1;
            t2 = MoistAir.dryBulbFromEnthalpyC(h2, w1);
            surface = t1 - (t1 - t2) / (1 - bypass);
        }
        return new Output(
                m, h1, h2, surface, t2, w2, m * (w1 - w2) * 3600, dewPoint, wetSurface, wet, notices(surface, wet));
    }

    private static double saturatedAtC(double enthalpyJPerKg, double atMostC, double pressurePa, Input in) {
        double coldest = surplus(COLDEST_SURFACE_C, enthalpyJPerKg, pressurePa);
        if (coldest > 0) {
            throw new Refused(Violation.of(
                    "coolingW",
                    in.coolingW(),
                    "So much heat out of so little air would need a coil below " + (int) COLDEST_SURFACE_C
                            + " °C: give less heat or more airflow.",
                    BYPASS_MODEL.printed()));
        }
        // saturated air at the dry bulb holds at least as much as the entering air, so the root lies below it
        return Roots.bracketed(t -> surplus(t, enthalpyJPerKg, pressurePa), COLDEST_SURFACE_C, atMostC + 1, 1e-9);
    }

    private static double surplus(double temperatureC, double enthalpyJPerKg, double pressurePa) {
        return MoistAir.enthalpyJPerKg(temperatureC, MoistAir.saturatedHumidityRatio(temperatureC, pressurePa))
                - enthalpyJPerKg;
    }

    private static List<Notice> notices(double surfaceC, boolean wet) {
        List<Notice> notices = new ArrayList<>();
        if (wet && surfaceC < ICE_C) {
            notices.add(Notice.advice(
                    "coil-ices",
                    "surfaceC",
                    "The surface is below freezing: the coil ices up. More airflow or less capacity is needed.",
                    ICING));
        } else if (wet && surfaceC < ICE_WARNING_C) {
            notices.add(Notice.advice(
                    "coil-near-ice",
                    "surfaceC",
                    "The surface is within 2 K of freezing, and the metal is colder than this mean: the coil may ice up.",
                    ICING));
        }
        return List.copyOf(notices);
    }
}
