package oakum.physics.envelope;

import static oakum.physics.material.Material.AIR_PERMEABILITY_KG_PER_M_S_PA;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** Condensation in one long winter against evaporation in one long summer. */
public final class CondensationBlock {
    private static final double USUAL_LIMIT_KG_PER_M2 = 1.0;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "condensation-block", "1.0", "Condensation, winter and summer block", Input.class, Output.class)
            .purpose("Holds what condenses in a constant winter against what evaporates in a constant summer.")
            .equation("winter: g_c = δ_0·((p_in − p_c)/Δs_in − (p_c − p_out)/Δs_out) at each plane", Citations.BLOCK)
            .equation(
                    "summer: g = δ_0·(p_sat − p)·(1/s_out + 1/s_in), outwards from the outermost plane and inwards from"
                            + " the innermost",
                    Citations.BLOCK)
            .source(Citations.BLOCK)
            .source(Citations.SATURATION)
            .caution(Cautions.SCREENING)
            .caution(Cautions.MOULD)
            .validation("No published example was found; a framed wall computed a second time by independent code.")
            .by(CondensationBlock::compute);

    private CondensationBlock() {}

    /** The summer block: the same air on both sides. */
    public record Summer(
            @Quantity(
                    label = "Temperature",
                    symbol = "θ",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 60,
                    limitSource = InputRange.SATURATION)
            double temperatureC,

            @Quantity(
                    label = "Relative humidity",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0.01,
                    max = 1,
                    limitSource = "saturation")
            double humidityFraction,

            @Quantity(label = "Duration", symbol = "t", unit = Unit.DAY, min = 1, max = 365, limitSource = "a year")
            double durationD) {}

    /** An assembly and its two blocks. */
    public record Input(
            @Entry(label = "Lies", help = "This method takes 0.25 inside and 0.04 outside.")
            Placement placement,

            @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
            List<LayerRow> layers,

            @Entry(label = "Winter") SteadyClimate winter,

            @Quantity(
                    label = "Duration of the winter",
                    symbol = "t",
                    unit = Unit.DAY,
                    min = 1,
                    max = 365,
                    limitSource = "a year")
            double winterD,

            @Entry(label = "Summer") Summer summer,

            @Entry(label = "Vapour resistances", help = "Left out: dry cup.") @Nullable
            CupValues cupValues,

            @Quantity(
                    label = "Most water allowed",
                    unit = Unit.CONDENSATE,
                    min = 0,
                    max = 10,
                    limitSource = InputRange.PLAUSIBLE,
                    help = "Left out: 1 kg/m²; 0.5 at faces that take up no water.")
            @Nullable
            Double limitKgPerM2) {
        public Input {
            layers = List.copyOf(layers);
        }
    }

    /** A plane of the winter. */
    public record Plane(
            @Entry(label = "Place") String place,

            @Quantity(label = "Temperature", symbol = "θ", unit = Unit.CELSIUS, step = 0.01)
            double temperatureC,

            @Quantity(label = "Saturation pressure", symbol = "p_sat", unit = Unit.PASCAL, step = 0.1)
            double saturationPa,

            @Quantity(label = "Condensed", symbol = "M_c", unit = Unit.CONDENSATE, step = 0.001)
            double condensedKgPerM2) {}

    /** Winter against summer. */
    public record Output(
            @Quantity(
                    label = "Condenses in winter",
                    symbol = "M_c",
                    unit = Unit.CONDENSATE,
                    step = 0.001,
                    leading = true)
            double condensedKgPerM2,

            @Quantity(
                    label = "Can evaporate in summer",
                    symbol = "M_ev",
                    unit = Unit.CONDENSATE,
                    step = 0.001,
                    leading = true)
            double evaporableKgPerM2,

            @Entry(label = "Against evaporation and the most allowed")
            Verdict verdict,

            @Entry(label = "Planes, from inside") List<Plane> planes,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        VapourPath path = new VapourPath(
                Assembly.of(in.placement(), in.layers()), in.cupValues() == null ? CupValues.DRY : in.cupValues());
        SteadyClimate winter = in.winter();
        double[] temperatures = path.temperaturesC(winter.outdoorC(), winter.indoorC());
        double[] saturation = path.saturationPa(winter.outdoorC(), winter.indoorC());
        VapourLine line = path.line(winter.outdoorPa(), winter.indoorPa(), saturation, new boolean[saturation.length]);
        List<Integer> nodes = line.planes();
        List<Plane> planes = new ArrayList<>();
        double condensed = 0;
        for (int k = nodes.size() - 1; k >= 0; k--) {
            double mass = line.rateKgPerSM2(k) * in.winterD() * MonthOfYear.SECONDS_IN_DAY;
            int node = nodes.get(k);
            planes.add(new Plane(path.nodes().get(node).name(), temperatures[node], saturation[node], mass));
            condensed += mass;
        }
        double evaporable = nodes.isEmpty() ? 0 : evaporable(path, in.summer(), nodes);
        double limit = in.limitKgPerM2() == null ? USUAL_LIMIT_KG_PER_M2 : in.limitKgPerM2();
        List<Notice> notices = new ArrayList<>(path.assembly().notices());
        notices.add(Notice.note(
                "screening-only",
                "verdict",
                "Two constant seasons and diffusion between the framing only: no air leakage, rain, sun or stored water.",
                Citations.BLOCK));
        return new Output(
                condensed,
                evaporable,
                Verdict.atMost(condensed, 0, Math.min(limit, nodes.isEmpty() ? limit : evaporable)),
                planes,
                notices);
    }

    private static double evaporable(VapourPath path, Summer summer, List<Integer> nodes) {
        double saturation = Iso13788Saturation.pressurePa(summer.temperatureC());
        double out = path.nodes().get(nodes.get(0)).sdM();
        double in =
                path.sdTotalM() - path.nodes().get(nodes.get(nodes.size() - 1)).sdM();
        return AIR_PERMEABILITY_KG_PER_M_S_PA
                * saturation
                * (1 - summer.humidityFraction())
                * (1 / out + 1 / in)
                * summer.durationD()
                * MonthOfYear.SECONDS_IN_DAY;
    }
}
