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
import org.jspecify.annotations.Nullable;

/** Thermal resistance and U-value of a wall, a roof or a floor from its layers. */
public final class AssemblyResistance {
    private static final double WORTH_CORRECTING = 0.03;
    private static final double GREATEST_RATIO = 1.5;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "assembly-resistance", "1.0", "Thermal resistance of an assembly", Input.class, Output.class)
            .purpose("Gives the U-value of a wall, a roof or a floor with its framing, air layers, fasteners and gaps.")
            .equation("R = d/λ; an air layer from the table", Citations.SURFACES)
            .equation("1/R' = Σ f_k/R_k over all full paths, R_k from surface to surface", Citations.COMBINED)
            .equation("R'' = R_si + Σ 1/(Σ f_i/R_ij) + R_se", Citations.COMBINED)
            .equation("R_tot = (R' + R'')/2, e = (R' − R'')/(2 R_tot)", Citations.COMBINED)
            .equation(
                    "slightly ventilated: R_tot = (1500 − A_v)/1000·R_still + (A_v − 500)/1000·R_ventilated",
                    Citations.VENTILATED)
            .equation("ΔU_g = ΔU''·(R_1/R_tot)²", Citations.CORRECTIONS)
            .equation("ΔU_f = α·λ_f·A_f·n_f/d_0·(R_1/R_tot)², α = 0.8 or 0.8·d_1/d_0", Citations.CORRECTIONS)
            .equation("U = 1/R_tot + ΔU_g + ΔU_f", Citations.COMBINED)
            .equation("parallel path: U = Σ f_k/R_k = 1/R'; isothermal planes: U = 1/R''", Citations.HANDBOOK)
            .source(Citations.COMBINED)
            .source(Citations.SURFACES)
            .source(Citations.VENTILATED)
            .source(Citations.CORRECTIONS)
            .source(Citations.FRAMING)
            .validation(
                    "A government guide's worked example of a framed wall to 0.001 W/(m²·K); further walls and roofs"
                            + " computed a second time by independent code.")
            .by(AssemblyResistance::compute);

    private AssemblyResistance() {}

    /** An assembly. */
    public record Input(
            @Entry(label = "Lies") Placement placement,

            @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
            List<LayerRow> layers,

            @Entry(label = "Gaps in the insulation") @Nullable
            AirGaps airGaps,

            @Entry(label = "Insulation with the gaps", help = "Short name of the layer.", maxLength = 40) @Nullable
            String gapLayerId,

            @Entry(label = "Fasteners through the insulation", maxRows = 10)
            List<FastenerRow> fasteners) {
        public Input {
            layers = List.copyOf(layers);
            fasteners = fasteners == null ? List.of() : List.copyOf(fasteners);
        }
    }

    /** What each layer adds. */
    public record LayerResult(
            @Entry(label = "Short name") String id,
            @Entry(label = "Name") String label,

            @Quantity(label = "Thickness", symbol = "d", unit = Unit.SMALL_METRE)
            double thicknessM,

            @Quantity(label = "Conductivity used", symbol = "λ", unit = Unit.WATT_PER_METRE_KELVIN) @Nullable
            Double conductivityWPerMK,

            @Quantity(label = "Resistance", symbol = "R", unit = Unit.SQUARE_METRE_KELVIN_PER_WATT, step = 0.001)
            double resistanceM2KPerW,

            @Quantity(label = "Share of framing", symbol = "f", unit = Unit.FRACTION)
            double framingFraction,

            @Quantity(label = "Resistance through the framing", unit = Unit.SQUARE_METRE_KELVIN_PER_WATT, step = 0.001)
            double framingResistanceM2KPerW,

            @Entry(label = "Values from", maxLength = 600) String valuesFrom) {}

    /** Resistance and U-value. */
    public record Output(
            @Quantity(
                    label = "U-value, with corrections",
                    symbol = "U",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    step = 0.001,
                    leading = true)
            double uValueWPerM2K,

            @Quantity(
                    label = "Thermal resistance, surface to surface",
                    symbol = "R_tot",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    step = 0.001,
                    help = "Without corrections.")
            double resistanceM2KPerW,

            @Quantity(label = "Upper limit", symbol = "R'", unit = Unit.SQUARE_METRE_KELVIN_PER_WATT, step = 0.001)
            double upperLimitM2KPerW,

            @Quantity(label = "Lower limit", symbol = "R''", unit = Unit.SQUARE_METRE_KELVIN_PER_WATT, step = 0.001)
            double lowerLimitM2KPerW,

            @Quantity(label = "Greatest error of the mean", symbol = "e", unit = Unit.FRACTION, step = 0.0001)
            double errorFraction,

            @Quantity(label = "Upper over lower limit", symbol = "R'/R''", unit = Unit.ONE, step = 0.001)
            double limitRatio,

            @Quantity(label = "Added by gaps", symbol = "ΔU_g", unit = Unit.WATT_PER_SQUARE_METRE_KELVIN, step = 0.0001)
            double gapsWPerM2K,

            @Quantity(
                    label = "Added by fasteners",
                    symbol = "ΔU_f",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    step = 0.0001)
            double fastenersWPerM2K,

            @Quantity(
                    label = "U-value by parallel path",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    step = 0.001,
                    help = "As the handbook takes it for wood framing, without corrections.")
            double parallelPathWPerM2K,

            @Quantity(
                    label = "U-value by isothermal planes",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    step = 0.001,
                    help = "Without corrections.")
            double isothermalPlanesWPerM2K,

            @Quantity(
                    label = "Inside surface used",
                    symbol = "R_si",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    step = 0.001)
            double insideSurfaceM2KPerW,

            @Quantity(
                    label = "Outside surface used",
                    symbol = "R_se",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    step = 0.001)
            double outsideSurfaceM2KPerW,

            @Entry(label = "Layers that count, from inside") List<LayerResult> layers,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        Assembly assembly = Assembly.of(in.placement(), in.layers());
        CombinedMethod limits = assembly.resistance();
        double resistance = limits.meanM2KPerW();
        List<Notice> notices = new ArrayList<>(assembly.notices());
        double gaps = gaps(in, assembly, resistance);
        double fasteners = 0;
        for (int i = 0; i < in.fasteners().size(); i++) {
            FastenerRow row = in.fasteners().get(i);
            ThermalLayer pierced = insulation(assembly, "fasteners[" + i + "].layerId", row.layerId());
            fasteners += row.addedWPerM2K(pierced.row().thicknessM(), pierced.resistanceM2KPerW() / resistance);
        }
        if (limits.ratio() > GREATEST_RATIO) {
            notices.add(Notice.rejected(
                    "limits-too-far-apart",
                    "limitRatio",
                    String.format(
                            Locale.ROOT,
                            "The upper limit is %.2f times the lower: above 1.5 the combined method does not hold; compute"
                                    + " the detail in two dimensions.",
                            limits.ratio()),
                    Citations.COMBINED));
        }
        if (gaps + fasteners > 0 && gaps + fasteners < WORTH_CORRECTING / resistance) {
            notices.add(Notice.note(
                    "corrections-small",
                    "uValueWPerM2K",
                    String.format(
                            Locale.ROOT,
                            "The corrections are %.1f %% of the U-value; the standard lets corrections below 3 %% be left"
                                    + " out.",
                            100 * (gaps + fasteners) * resistance),
                    Citations.CORRECTIONS));
        }
        return new Output(
                1 / resistance + gaps + fasteners,
                resistance,
                limits.upperM2KPerW(),
                limits.lowerM2KPerW(),
                limits.errorFraction(),
                limits.ratio(),
                gaps,
                fasteners,
                1 / limits.upperM2KPerW(),
                1 / limits.lowerM2KPerW(),
                assembly.insideSurface(),
                assembly.outsideSurface(),
                assembly.layers().stream().map(AssemblyResistance::result).toList(),
                notices);
    }

    private static double gaps(Input in, Assembly assembly, double resistance) {
        AirGaps gaps = in.airGaps();
        if (gaps == null || gaps == AirGaps.NONE) {
            return 0;
        }
        String id = in.gapLayerId();
        if (id == null) {
            throw Refused.of(
                    "gapLayerId", "", "The insulation with the gaps (gapLayerId) is missing.", Citations.CORRECTIONS);
        }
        return gaps.addedWPerM2K(insulation(assembly, "gapLayerId", id).resistanceM2KPerW() / resistance);
    }

    private static ThermalLayer insulation(Assembly assembly, String field, String id) {
        ThermalLayer layer = assembly.layer(id);
        if (layer == null || !(layer.row().thicknessM() > 0)) {
            throw Refused.of(
                    field,
                    id,
                    "\"" + id + "\" (" + field + ") is no layer with a thickness among those that count: "
                            + String.join(
                                    ", ",
                                    assembly.layers().stream()
                                            .map(l -> l.row().id())
                                            .toList())
                            + ".",
                    Citations.CORRECTIONS);
        }
        return layer;
    }

    private static LayerResult result(ThermalLayer layer) {
        return new LayerResult(
                layer.row().id(),
                layer.row().name(),
                layer.row().thicknessM(),
                layer.conductivityWPerMK(),
                layer.resistanceM2KPerW(),
                layer.framingFraction(),
                layer.framingResistanceM2KPerW(),
                layer.valuesFrom());
    }
}
