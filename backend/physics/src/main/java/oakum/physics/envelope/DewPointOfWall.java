package oakum.physics.envelope;

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
import oakum.physics.calculation.Verdict;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** Whether vapour, or indoor air that leaks, meets its dew point inside an assembly on a given day. */
public final class DewPointOfWall {
    private static final double INSULATION_M2K_PER_W = 0.5;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "dew-point-of-a-wall", "1.0", "Dew point of a wall", Input.class, Output.class)
            .purpose(
                    "Shows for one steady day where an assembly lies below the dew point, by diffusion and for indoor air"
                            + " that leaks to the cold side of the insulation.")
            .equation("θ = θ_e + (θ_i − θ_e)·R_out/R_tot", Citations.PROFILE)
            .equation("without condensation p runs straight over s_d = δ_0/permeance", Citations.PROFILE)
            .equation("condensation = (p_i − p_s)·δ_0/s_in − (p_s − p_e)·δ_0/s_out", Citations.PROFILE)
            .equation("leaking indoor air: φ = p_i/p_sat(θ of the plane); it condenses above 1", Citations.PROFILE)
            .equation("least share of resistance outside of the plane = (θ_dew − θ_e)/(θ_i − θ_e)", Citations.PROFILE)
            .source(Citations.PROFILE)
            .source(Citations.SATURATION)
            .caution(Cautions.SCREENING)
            .caution(Cautions.MOULD)
            .validation("No published example was found; two walls computed a second time by independent code.")
            .by(DewPointOfWall::compute);

    private DewPointOfWall() {}

    /** An assembly and its day. */
    public record Input(
            @Entry(label = "Lies") Placement placement,

            @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
            List<LayerRow> layers,

            @Entry(label = "Air on both sides") SteadyClimate climate,

            @Entry(label = "Vapour resistances", help = "Left out: dry cup.") @Nullable
            CupValues cupValues,

            @Entry(
                    label = "Leaking air reaches the outside face of",
                    help =
                            "Short name of a layer; left out: the innermost insulation, all its layers that lie together.",
                    maxLength = 40)
            @Nullable
            String leakToLayerId) {
        public Input {
            layers = List.copyOf(layers);
        }
    }

    /** A face between two layers. */
    public record Face(
            @Entry(label = "Place") String place,

            @Quantity(label = "Temperature", symbol = "θ", unit = Unit.CELSIUS, step = 0.01)
            double temperatureC,

            @Quantity(label = "Saturation pressure", symbol = "p_sat", unit = Unit.PASCAL, step = 0.1)
            double saturationPa,

            @Quantity(label = "Vapour pressure without condensation", symbol = "p", unit = Unit.PASCAL, step = 0.1)
            double straightPa,

            @Quantity(label = "Vapour pressure", unit = Unit.PASCAL, step = 0.1)
            double vapourPa,

            @Quantity(label = "Condenses in a day", unit = Unit.CONDENSATE, step = 0.0001)
            double condensedPerDayKgPerM2,

            @Quantity(
                    label = "Humidity of indoor air that leaks there",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    step = 0.001)
            double leakHumidityFraction) {}

    /** What the day brings. */
    public record Output(
            @Quantity(label = "Condenses by diffusion in a day", unit = Unit.CONDENSATE, step = 0.0001, leading = true)
            double condensedPerDayKgPerM2,

            @Entry(label = "Plane that leaking air reaches") String leakPlace,

            @Quantity(label = "Its temperature", symbol = "θ", unit = Unit.CELSIUS, step = 0.01)
            double leakPlaneC,

            @Quantity(
                    label = "Humidity of indoor air there",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    leading = true)
            double leakHumidityFraction,

            @Entry(label = "Leaking air stays above its dew point")
            Verdict leakVerdict,

            @Quantity(label = "Dew point of the indoor air", unit = Unit.CELSIUS, step = 0.01)
            double indoorDewPointC,

            @Quantity(label = "Resistance outside of that plane, of the whole", unit = Unit.FRACTION, step = 0.001)
            double outsideShareFraction,

            @Quantity(
                    label = "Share needed there to stay above the dew point",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    help = "Left out where it is not colder outdoors.")
            @Nullable
            Double neededShareFraction,

            @Quantity(
                    label = "Indoor humidity that plane allows",
                    symbol = "φ_i",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    help = "Vapour-open inside, no storage: a quick bound.")
            double allowedIndoorHumidityFraction,

            @Quantity(
                    label = "Thermal resistance between the framing",
                    symbol = "R",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    step = 0.001)
            double resistanceM2KPerW,

            @Quantity(label = "Diffusion thickness", symbol = "s_d", unit = Unit.METRE, step = 0.001)
            double diffusionThicknessM,

            @Entry(label = "Faces, from inside") List<Face> faces,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        VapourPath path = new VapourPath(
                Assembly.of(in.placement(), in.layers()), in.cupValues() == null ? CupValues.DRY : in.cupValues());
        double[] temperatures =
                path.temperaturesC(in.climate().outdoorC(), in.climate().indoorC());
        double[] saturation =
                path.saturationPa(in.climate().outdoorC(), in.climate().indoorC());
        double indoor = in.climate().indoorPa();
        double outdoor = in.climate().outdoorPa();
        VapourLine line = path.line(outdoor, indoor, saturation, new boolean[saturation.length]);
        double[] pressures = line.pressuresPa();
        double[] rates = new double[saturation.length];
        double condensed = 0;
        for (int k = 0; k < line.planes().size(); k++) {
            double perDay = line.rateKgPerSM2(k) * MonthOfYear.SECONDS_IN_DAY;
            rates[line.planes().get(k)] = perDay;
            condensed += perDay;
        }
        List<Face> faces = new ArrayList<>();
        for (int i = saturation.length - 1; i >= 0; i--) {
            VapourPath.Node node = path.nodes().get(i);
            if (node.face() || rates[i] > 0) {
                faces.add(new Face(
                        node.name(),
                        temperatures[i],
                        saturation[i],
                        outdoor + (indoor - outdoor) * node.sdM() / path.sdTotalM(),
                        pressures[i],
                        rates[i],
                        indoor / saturation[i]));
            }
        }
        int plane = leakPlane(in, path);
        double share = path.nodes().get(plane).resistanceM2KPerW() / path.resistanceM2KPerW();
        double dewPoint = Iso13788Saturation.dewPointC(indoor);
        double leak = indoor / saturation[plane];
        Double needed = in.climate().indoorC() > in.climate().outdoorC()
                ? (Double) Math.max(
                        0,
                        (dewPoint - in.climate().outdoorC())
                                / (in.climate().indoorC() - in.climate().outdoorC()))
                : null;
        return new Output(
                condensed,
                path.nodes().get(plane).name(),
                temperatures[plane],
                leak,
                Verdict.atMost(leak, 0, 1),
                dewPoint,
                share,
                needed,
                Math.min(
                        1,
                        saturation[plane]
                                / Iso13788Saturation.pressurePa(in.climate().indoorC())),
                path.resistanceM2KPerW(),
                path.sdTotalM(),
                faces,
                notices(path, leak, share, needed, path.nodes().get(plane).name()));
    }

    /** The node at the outside face of the layer that leaking air is thought to pass. */
    private static int leakPlane(Input in, VapourPath path) {
        List<ThermalLayer> layers = path.assembly().layers();
        int passed = in.leakToLayerId() == null ? innermostInsulation(layers) : named(layers, in.leakToLayerId());
        List<Integer> faces = new ArrayList<>();
        for (int i = 0; i < path.nodes().size(); i++) {
            if (path.nodes().get(i).face()) {
                faces.add(i);
            }
        }
        return faces.get(faces.size() - 2 - passed);
    }

    private static int named(List<ThermalLayer> layers, String id) {
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).row().id().equals(id)) {
                return i;
            }
        }
        throw Refused.of(
                "leakToLayerId",
                id,
                "\"" + id + "\" (leakToLayerId) is no layer among those that count.",
                Citations.PROFILE);
    }

    /** The outermost of the insulation layers that lie together innermost; without insulation the outermost layer. */
    private static int innermostInsulation(List<ThermalLayer> layers) {
        int i = 0;
        while (i < layers.size() - 1 && layers.get(i).resistanceM2KPerW() < INSULATION_M2K_PER_W) {
            i++;
        }
        while (i < layers.size() - 1 && layers.get(i + 1).resistanceM2KPerW() >= INSULATION_M2K_PER_W) {
            i++;
        }
        return i;
    }

    private static List<Notice> notices(
            VapourPath path, double leak, double share, @Nullable Double needed, String place) {
        List<Notice> notices = new ArrayList<>(path.assembly().notices());
        if (leak > 1 && needed != null) {
            notices.add(Notice.advice(
                    "too-little-insulation-outside",
                    "outsideShareFraction",
                    String.format(
                            Locale.ROOT,
                            "Indoor air that leaks to %s condenses there: %.0f %% of the resistance lies outside of it, %.0f"
                                    + " %% would keep it above the dew point.",
                            place,
                            100 * share,
                            100 * needed),
                    Citations.PROFILE));
        }
        return notices;
    }
}
