package oakum.physics.controllayer;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;
import oakum.physics.envelope.AirLayerVentilation;
import oakum.physics.envelope.AssemblyKind;
import oakum.physics.envelope.Outside;
import org.jspecify.annotations.Nullable;

/** The usual mistakes of one assembly: order of layers, drying, drainage, cladding and light. */
public final class AssemblyFindings {
    /** Above it a layer lets no drying through that matters: 1 perm. */
    static final double TIGHT_SD_M = 3.5;

    /** Inside over outside, in the cold. */
    static final double INSIDE_TO_OUTSIDE = 5;

    static final double CAPILLARY_BREAK_M = 0.010;
    static final double TIMBER_CAVITY_M = 0.021;
    static final double COUNTER_BATTEN_M = 0.016;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "assembly-findings", "1.0", "Usual mistakes of an assembly", Input.class, Result.class)
            .purpose(
                    "Looks through one assembly for the mistakes that rot it: no way to dry, layers in the wrong order,"
                            + " an edge that cannot drain, a cladding that its membrane does not stand.")
            .equation("vapour-closed on both sides where sd,in > 3.5 m and sd,out > 3.5 m, wet values", Rules.TIGHT)
            .equation("sd,in (dry) ≥ 5 · sd,out (wet)", Rules.ONE_SIDE_OPEN)
            .equation("open share = joint / (joint + board)", Rules.OPEN_JOINTS)
            .source(Rules.TIMBER_CLADDING)
            .source(Rules.ONE_SIDE_OPEN)
            .source(Rules.DRAINING_EDGE)
            .source(Rules.WARM_SIDE)
            .caution(new Caution(
                    "Mould",
                    "These rules see what is drawn, not what is built, and none of them predicts moisture: compute the"
                            + " year, and look before the work is covered."))
            .validation("The rules of the sheets of the trade, each broken and mended in turn; no published worked"
                    + " example was found.")
            .by(AssemblyFindings::compute);

    private AssemblyFindings() {}

    /**
     * One assembly as drawn.
     *
     * @param outside null for outdoor air
     * @param membrane the outer membrane's own limits, or null where none is named
     * @param sunDaysUsedD days that the membrane has stood in the sun, or null where no clock runs
     */
    public record Input(
            @Entry(label = "Kind") AssemblyKind kind,

            @Entry(label = "Outside of it") @Nullable Outside outside,

            @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
            List<AssemblyLayer> layers,

            @Entry(label = "Cladding") @Nullable Cladding cladding,

            @Entry(label = "Outer membrane") @Nullable OuterMembrane membrane,

            @Quantity(
                    label = "Days in the sun so far",
                    unit = Unit.DAY,
                    min = 0,
                    max = 10000,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double sunDaysUsedD) {}

    /**
     * One layer, counted from inside.
     *
     * @param materialId of the library, whose vapour resistance counts where none is typed; or null
     * @param sdDryM equivalent air layer by dry cup, or null
     * @param sdWetM the same by wet cup; null takes the dry one
     */
    public record AssemblyLayer(
            @Entry(label = "Short name", maxLength = 40) String id,

            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Thickness",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 2,
                    limitSource = Rules.PLAUSIBLE)
            double thicknessM,

            @Entry(label = "Material of the library", help = "Its short name there.", maxLength = 60) @Nullable
            String materialId,

            @Quantity(
                    label = "Equivalent air layer, dry",
                    symbol = "s_d",
                    unit = Unit.METRE,
                    min = 0,
                    max = 5000,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double sdDryM,

            @Quantity(
                    label = "Equivalent air layer, wet",
                    symbol = "s_d,wet",
                    unit = Unit.METRE,
                    min = 0,
                    max = 5000,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double sdWetM,

            @Entry(label = "Controls", maxRows = 6) List<LayerControl> controls,

            @Entry(label = "Outdoor air through this layer") @Nullable
            AirLayerVentilation ventilation,

            @Entry(label = "Bottom edge") @Nullable EdgeState bottomEdge) {
        boolean does(Control control) {
            return controls.stream().anyMatch(c -> c.control() == control);
        }

        boolean carries(Control control) {
            return controls.stream().anyMatch(c -> c.carries(control));
        }

        boolean isVented() {
            return ventilation == AirLayerVentilation.WELL;
        }
    }

    /**
     * The outer membrane's own limits.
     *
     * @param maxJointWidthM widest joint in front of it; 0 where it must stand behind closed cladding, null where the
     *     data sheet was not read
     * @param maxOpenFraction most open share in front of it, or null
     */
    public record OuterMembrane(
            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Days it may stand in the sun",
                    unit = Unit.ONE,
                    min = 1,
                    max = 3650,
                    limitSource = Rules.PLAUSIBLE)
            int sunLimitDays,

            @Entry(label = "Made for permanent sun") boolean permanentSun,

            @Quantity(
                    label = "Widest joint in front of it",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.2,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double maxJointWidthM,

            @Quantity(
                    label = "Most open share in front of it",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double maxOpenFraction) {}

    /**
     * What was found.
     *
     * @param openFraction share of the cladding that is joint; null where the boards or joints are not said
     * @param sdInsideM from the room to the insulation, dry; null where a layer's value is not known
     * @param sdOutsideM from the insulation to the vented cavity, wet; null where a layer's value is not known
     */
    public record Result(
            @Entry(label = "Findings") List<Finding> findings,

            @Quantity(label = "Rules broken", unit = Unit.COUNT, step = 1, leading = true)
            int failCount,

            @Quantity(label = "Not proven", unit = Unit.COUNT, step = 1, leading = true)
            int notProvenCount,

            @Quantity(label = "Open share of the cladding", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double openFraction,

            @Quantity(
                    label = "Air layer inside of the insulation, dry",
                    symbol = "sd,in",
                    unit = Unit.METRE,
                    step = 0.01)
            @Nullable
            Double sdInsideM,

            @Quantity(
                    label = "Air layer outside of the insulation, wet",
                    symbol = "sd,out",
                    unit = Unit.METRE,
                    step = 0.01)
            @Nullable
            Double sdOutsideM) {}

    private static Result compute(Input input) {
        requireOnce(input.layers());
        List<Finding> findings = new ArrayList<>();
        Drying drying = Drying.of(input);
        drying.findings().forEach(findings::add);
        order(input).forEach(findings::add);
        edges(input).forEach(findings::add);
        Cladding cladding = input.cladding();
        Double open = null;
        if (cladding != null) {
            findings.addAll(CladdingRules.battens(cladding));
            findings.addAll(CladdingRules.cavity(cladding, input.layers()));
            open = CladdingRules.openFraction(cladding);
            findings.addAll(CladdingRules.light(cladding, input.membrane(), open));
        }
        sunDays(input).ifPresent(findings::add);
        return new Result(
                List.copyOf(findings),
                count(findings, FindingWeight.FAILS),
                count(findings, FindingWeight.NOT_PROVEN),
                open,
                drying.insideDryM(),
                drying.outsideWetM());
    }

    private static int count(List<Finding> findings, FindingWeight weight) {
        return (int) findings.stream().filter(f -> f.weight() == weight).count();
    }

    private static void requireOnce(List<AssemblyLayer> layers) {
        Set<String> seen = new HashSet<>();
        for (AssemblyLayer layer : layers) {
            if (!seen.add(layer.id())) {
                throw new Refused(List.of(Violation.of(
                        "layers[" + layer.id() + "].id",
                        layer.id(),
                        "\"" + layer.id() + "\" stands twice among the layers.",
                        "")));
            }
        }
    }

    /** Water is met from outside to inside by cladding, cavity, membrane; vapour is held on the warm side. */
    private static List<Finding> order(Input input) {
        List<Finding> findings = new ArrayList<>();
        List<AssemblyLayer> layers = input.layers();
        int water = first(layers, Control.WATER);
        int rain = first(layers, Control.RAIN);
        int drain = first(layers, Control.DRAIN);
        boolean weather = input.outside() != Outside.GROUND;
        if (weather && rain >= 0 && water > rain) {
            findings.add(Finding.of(
                    "water-layer-outside-of-cladding",
                    FindingWeight.FAILS,
                    layers.get(water).id(),
                    layers.get(water).label() + " holds back water, but lies outside of "
                            + layers.get(rain).label() + ".",
                    "Rain that passes the cladding meets no layer that leads it out.",
                    Rules.RAIN_OUTERMOST));
        }
        if (weather && rain >= 0 && drain < 0) {
            findings.add(Finding.of(
                    "no-drained-cavity",
                    FindingWeight.FAILS,
                    layers.get(rain).id(),
                    "Behind " + layers.get(rain).label() + " no layer drains and dries.",
                    "Water held between cladding and membrane neither runs off nor dries.",
                    Rules.RAIN_OUTERMOST));
        }
        if (weather && rain >= 0 && drain > rain) {
            findings.add(Finding.of(
                    "cavity-outside-of-cladding",
                    FindingWeight.FAILS,
                    layers.get(drain).id(),
                    layers.get(drain).label() + " drains and dries, but lies outside of "
                            + layers.get(rain).label() + ".",
                    "Water held between cladding and membrane neither runs off nor dries.",
                    Rules.RAIN_OUTERMOST));
        }
        int vapour = first(layers, Control.VAPOUR);
        int insulation = first(layers, Control.THERMAL);
        boolean coldSide = weather
                && vapour >= 0
                && insulation >= 0
                && !layers.get(vapour).does(Control.THERMAL)
                && vapour > last(layers, Control.THERMAL);
        if (coldSide) {
            findings.add(Finding.of(
                    "vapour-layer-on-cold-side",
                    FindingWeight.FAILS,
                    layers.get(vapour).id(),
                    layers.get(vapour).label() + " holds back vapour, but lies outside of all insulation.",
                    "Room vapour passes the insulation and condenses on it in the cold.",
                    Rules.WARM_SIDE));
        }
        return findings;
    }

    /** A membrane or a cavity whose lower edge is shut keeps the water that gets behind it. */
    private static List<Finding> edges(Input input) {
        List<Finding> findings = new ArrayList<>();
        for (AssemblyLayer layer : input.layers()) {
            boolean leadsWater = layer.does(Control.WATER) || layer.does(Control.DRAIN);
            if (leadsWater && layer.bottomEdge() == EdgeState.SEALED && input.outside() != Outside.GROUND) {
                findings.add(Finding.of(
                        "bottom-edge-sealed-" + layer.id(),
                        FindingWeight.FAILS,
                        layer.id(),
                        layer.label() + " is sealed along its bottom edge.",
                        "Water behind it is trapped: the bottom edge must drain, lapped over the flashing and never"
                                + " taped to it.",
                        Rules.DRAINING_EDGE));
            }
        }
        return findings;
    }

    private static Optional<Finding> sunDays(Input input) {
        OuterMembrane membrane = input.membrane();
        Double used = input.sunDaysUsedD();
        if (membrane == null || used == null || membrane.permanentSun() || used < membrane.sunLimitDays()) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                "sun-days-used-up",
                FindingWeight.FAILS,
                "",
                String.format(
                        Locale.ROOT,
                        "%s has stood in the sun for %.0f days; %d are allowed.",
                        membrane.label(),
                        used,
                        membrane.sunLimitDays()),
                "Sunlight has taken strength and water resistance that nobody can see: ask the data sheet what a covered"
                        + " or doubled membrane needs now.",
                Rules.SUN_DAYS));
    }

    static int first(List<AssemblyLayer> layers, Control control) {
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).carries(control)) {
                return i;
            }
        }
        return -1;
    }

    static int last(List<AssemblyLayer> layers, Control control) {
        for (int i = layers.size() - 1; i >= 0; i--) {
            if (layers.get(i).carries(control)) {
                return i;
            }
        }
        return -1;
    }
}
