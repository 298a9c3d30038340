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
import oakum.physics.calculation.Violation;
import org.jspecify.annotations.Nullable;

/** Heat that leaves a whole house through its envelope, for each kelvin. */
public final class HeatLossCoefficient {
    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "heat-loss-coefficient", "1.0", "Heat loss through the envelope", Input.class, Output.class)
            .purpose("Adds up what the areas, the lines and the points of an envelope lose for each kelvin.")
            .equation("H = Σ b_i·A_i·U_i + Σ l_k·ψ_k + Σ n_j·χ_j", Citations.TRANSMISSION)
            .equation("U_mean = H/Σ A_i", Citations.PROPOSED)
            .source(Citations.TRANSMISSION)
            .source(Citations.BRIDGES)
            .validation("No published example was found; computed a second time by independent code.")
            .by(HeatLossCoefficient::compute);

    private HeatLossCoefficient() {}

    /** One area of the envelope. */
    public record Element(
            @Entry(label = "Short name", help = "Names the row; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") @Nullable String label,

            @Quantity(
                    label = "Area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 0,
                    max = 10_000,
                    limitSource = InputRange.PLAUSIBLE)
            double areaM2,

            @Quantity(
                    label = "U-value",
                    symbol = "U",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 0,
                    max = 10,
                    limitSource = InputRange.PLAUSIBLE)
            double uValueWPerM2K,

            @Quantity(
                    label = "Share of the temperature difference",
                    symbol = "b",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = "0 is heated, 1 is outdoors",
                    help = "Below 1 to the ground or an unheated room; left out: 1.")
            @Nullable
            Double temperatureFraction) {
        double lossWPerK() {
            return areaM2 * uValueWPerM2K * (temperatureFraction == null ? 1 : temperatureFraction);
        }
    }

    /** An envelope. */
    public record Input(
            @Entry(label = "Areas measured by") Dimensions areaDimensions,

            @Entry(label = "Areas", minRows = 1, maxRows = 100)
            List<Element> elements,

            @Entry(label = "Bridges along a line", maxRows = 60)
            List<LinearBridge> linearBridges,

            @Entry(label = "Bridges at points", maxRows = 60)
            List<PointBridge> pointBridges) {
        public Input {
            elements = List.copyOf(elements);
            linearBridges = linearBridges == null ? List.of() : List.copyOf(linearBridges);
            pointBridges = pointBridges == null ? List.of() : List.copyOf(pointBridges);
        }
    }

    /** What one row loses. */
    public record Loss(
            @Entry(label = "Short name") String id,
            @Entry(label = "Name") String label,

            @Quantity(label = "Heat loss", symbol = "H", unit = Unit.WATT_PER_KELVIN, step = 0.01)
            double lossWPerK) {}

    /** What the house loses. */
    public record Output(
            @Quantity(label = "Heat loss", symbol = "H", unit = Unit.WATT_PER_KELVIN, step = 0.1, leading = true)
            double lossWPerK,

            @Quantity(label = "Through areas", unit = Unit.WATT_PER_KELVIN, step = 0.01)
            double areasWPerK,

            @Quantity(label = "Along lines", unit = Unit.WATT_PER_KELVIN, step = 0.01)
            double linesWPerK,

            @Quantity(label = "At points", unit = Unit.WATT_PER_KELVIN, step = 0.01)
            double pointsWPerK,

            @Quantity(label = "Area of the envelope", symbol = "A", unit = Unit.SQUARE_METRE, step = 0.1)
            double areaM2,

            @Quantity(
                    label = "Mean U-value, bridges included",
                    symbol = "U_mean",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    step = 0.001,
                    leading = true)
            double meanUValueWPerM2K,

            @Entry(label = "Row by row") List<Loss> losses,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        refuseMixedDimensions(in);
        double area = in.elements().stream().mapToDouble(Element::areaM2).sum();
        if (!(area > 0)) {
            throw Refused.of("elements", "0", "The envelope (elements) has no area at all.", Citations.TRANSMISSION);
        }
        List<Loss> losses = new ArrayList<>();
        double areas = 0;
        for (Element e : in.elements()) {
            String label = e.label();
            losses.add(new Loss(e.id(), label == null ? e.id() : label, e.lossWPerK()));
            areas += e.lossWPerK();
        }
        double lines = 0;
        for (LinearBridge b : in.linearBridges()) {
            losses.add(new Loss(b.id(), b.label(), b.lengthM() * b.psiWPerMK()));
            lines += b.lengthM() * b.psiWPerMK();
        }
        double points = 0;
        for (PointBridge b : in.pointBridges()) {
            losses.add(new Loss(b.id(), b.label(), b.pointCount() * b.chiWPerK()));
            points += b.pointCount() * b.chiWPerK();
        }
        double loss = areas + lines + points;
        return new Output(loss, areas, lines, points, area, loss / area, losses, notices(in, areas, lines));
    }

    private static void refuseMixedDimensions(Input in) {
        List<Violation> mixed = new ArrayList<>();
        for (int i = 0; i < in.linearBridges().size(); i++) {
            LinearBridge bridge = in.linearBridges().get(i);
            if (bridge.dimensions() != in.areaDimensions()) {
                String field = "linearBridges[" + i + "].dimensions";
                mixed.add(Violation.of(
                        field,
                        bridge.dimensions(),
                        "ψ of \"" + bridge.label() + "\" (" + field + ") belongs to "
                                + bridge.dimensions().label()
                                + ", but the areas are measured by "
                                + in.areaDimensions().label()
                                + "; mixed, the corners count twice or not at all.",
                        Citations.BRIDGES.printed()));
            }
        }
        if (!mixed.isEmpty()) {
            throw new Refused(mixed);
        }
    }

    private static List<Notice> notices(Input in, double areas, double lines) {
        List<Notice> notices = new ArrayList<>();
        if (in.linearBridges().isEmpty()) {
            notices.add(Notice.advice(
                    "no-linear-bridges",
                    "linearBridges",
                    "No bridges along lines are counted. Corners, slab edges and windows have some; "
                            + (in.areaDimensions() == Dimensions.EXTERNAL
                                    ? "with outside dimensions leaving them out is often, not always, on the safe side."
                                    : "with inside dimensions leaving them out is on the unsafe side."),
                    Citations.BRIDGES));
        } else if (areas > 0) {
            notices.add(Notice.note(
                    "share-of-bridges",
                    "linesWPerK",
                    String.format(
                            Locale.ROOT,
                            "Bridges along lines are %.0f %% of what the areas lose.",
                            100 * lines / areas),
                    Citations.TRANSMISSION));
        }
        return notices;
    }
}
