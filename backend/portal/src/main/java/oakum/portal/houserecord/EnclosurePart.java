package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.controllayer.Cladding;
import oakum.physics.controllayer.EdgeState;
import oakum.physics.controllayer.ExpectedHole;
import oakum.physics.controllayer.Hole;
import oakum.physics.controllayer.Junction;
import oakum.physics.controllayer.LayerControl;
import oakum.physics.envelope.AirLayerVentilation;
import oakum.physics.envelope.AssemblyKind;
import oakum.physics.envelope.Dimensions;
import oakum.physics.envelope.LinearBridge;
import oakum.physics.envelope.Outside;
import oakum.physics.envelope.PointBridge;
import org.jspecify.annotations.Nullable;

/**
 * What keeps weather out: walls, roof, floor, windows, outer membrane, and how they are joined.
 *
 * @param areaDimensions how the areas of the assemblies were measured; null where nobody said
 */
public record EnclosurePart(
        @Entry(label = "Assemblies", maxRows = 30) List<Assembly> assemblies,
        @Entry(label = "Windows") @Nullable Windows windows,
        @Entry(label = "Outer membrane") @Nullable Membrane membrane,
        @Entry(label = "Form") @Nullable Form form,
        @Entry(label = "Areas measured by") @Nullable Dimensions areaDimensions,

        @Entry(
                label = "Junctions",
                help = "Where two assemblies meet, and how each of the four layers passes on.",
                maxRows = 100)
        List<Junction> junctions,

        @Entry(label = "Expected holes", help = "Kinds of holes that the equipment of the house brings.", maxRows = 60)
        List<ExpectedHole> expectedHoles,

        @Entry(label = "Holes through the red line", maxRows = 300)
        List<Hole> holes,

        @Entry(label = "Bridges along a line", maxRows = 60) List<LinearBridge> linearBridges,
        @Entry(label = "Bridges at points", maxRows = 60) List<PointBridge> pointBridges)
        implements Part {
    @SuppressWarnings({"ConstantConditions", "NullAway"}) // a document that was kept before these lists existed
    public EnclosurePart {
        assemblies = assemblies == null ? List.of() : List.copyOf(assemblies);
        junctions = junctions == null ? List.of() : List.copyOf(junctions);
        expectedHoles = expectedHoles == null ? List.of() : List.copyOf(expectedHoles);
        holes = holes == null ? List.of() : List.copyOf(holes);
        linearBridges = linearBridges == null ? List.of() : List.copyOf(linearBridges);
        pointBridges = pointBridges == null ? List.of() : List.copyOf(pointBridges);
    }

    /** The shape of the roof. */
    public enum RoofKind implements Labelled {
        SHED("shed roof"),
        GABLE("gable roof");

        private final String label;

        RoofKind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** One layer, counted from inside. */
    public record Layer(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Material") String material,

            @Quantity(
                    label = "Thickness",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE)
            double thicknessM,

            @Quantity(
                    label = "Conductivity",
                    symbol = "λ",
                    unit = Unit.WATT_PER_METRE_KELVIN,
                    min = 0.001,
                    max = 500,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double conductivityWPerMK,

            @Quantity(
                    label = "Thermal resistance",
                    symbol = "R",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    min = 0,
                    max = 50,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double thermalResistanceM2KPerW,

            @Entry(label = "Controls", help = "What the layer holds back.", maxRows = 5)
            List<LayerControl> controls,

            @Entry(label = "Drawn as") Hatch drawAs,

            @Entry(label = "Material of the library", help = "Its short name there.", maxLength = 60) @Nullable
            String materialId,

            @Quantity(
                    label = "Equivalent air layer, dry",
                    symbol = "s_d",
                    unit = Unit.METRE,
                    min = 0,
                    max = 5000,
                    limitSource = PlausibleRange.SOURCE,
                    help = "From the data sheet, dry cup; empty where the library says it.")
            @Nullable
            Double sdDryM,

            @Quantity(
                    label = "Equivalent air layer, wet",
                    symbol = "s_d,wet",
                    unit = Unit.METRE,
                    min = 0,
                    max = 5000,
                    limitSource = PlausibleRange.SOURCE,
                    help = "From the data sheet, wet cup; empty where the library says it.")
            @Nullable
            Double sdWetM,

            @Entry(label = "Framing through this layer", help = "Material of the library.", maxLength = 60) @Nullable
            String framingMaterialId,

            @Quantity(
                    label = "Share of framing",
                    symbol = "f",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double framingFraction,

            @Quantity(
                    label = "Conductivity of the framing",
                    symbol = "λ_f",
                    unit = Unit.WATT_PER_METRE_KELVIN,
                    min = 0.001,
                    max = 500,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double framingConductivityWPerMK,

            @Entry(label = "Outdoor air through this layer") @Nullable
            AirLayerVentilation ventilation,

            @Quantity(
                    label = "Opening to outdoors",
                    symbol = "A_v",
                    unit = Unit.SQUARE_METRE_PER_METRE,
                    min = 0,
                    max = 0.3,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double openingM2PerM,

            @Entry(label = "Bottom edge", help = "Of a membrane or a drained layer: whether water behind it can leave.")
            @Nullable
            EdgeState bottomEdge) {
        public Layer {
            controls = controls == null ? List.of() : List.copyOf(controls);
        }
    }

    /** How a layer is drawn in a section. */
    public enum Hatch implements Labelled {
        BOARD("board"),
        PANEL("panel"),
        MEMBRANE("membrane"),
        FIBRE("fibre fill"),
        RIGID("rigid insulation"),
        CAVITY("cavity"),
        CONCRETE("concrete"),
        GRAVEL("gravel"),
        METAL("metal"),
        CLADDING("cladding");

        private final String label;

        Hatch(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** One kind of wall, roof or floor. */
    public record Assembly(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Kind") AssemblyKind kind,

            @Quantity(
                    label = "Area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 0,
                    max = 5000,
                    limitSource = PlausibleRange.SOURCE)
            double areaM2,

            @Entry(label = "Layers, from inside", maxRows = 30)
            List<Layer> layers,

            @Quantity(
                    label = "Faces",
                    symbol = "γ",
                    unit = Unit.DEGREE,
                    min = 0,
                    max = 360,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Clockwise from north: 90 is east.")
            @Nullable
            Double azimuthDeg,

            @Quantity(
                    label = "Slope",
                    symbol = "β",
                    unit = Unit.DEGREE,
                    min = 0,
                    max = 180,
                    limitSource = PlausibleRange.SOURCE,
                    help = "0 lies face up, 90 stands, 180 lies face down.")
            @Nullable
            Double tiltDeg,

            @Entry(label = "Outside of it") @Nullable Outside outside,

            @Entry(
                    label = "Bounds the conditioned volume",
                    help = "No for a wall of a garage or a porch; left out means yes.")
            @Nullable
            Boolean bounds,

            @Quantity(
                    label = "Height",
                    symbol = "h",
                    unit = Unit.METRE,
                    min = 0.1,
                    max = 30,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double heightM,

            @Entry(label = "Cladding") @Nullable Cladding cladding,
            @Entry(label = "Fasteners", maxRows = 10) List<Fastener> fasteners) {
        @SuppressWarnings({"ConstantConditions", "NullAway"}) // a document that was kept before these lists existed
        public Assembly {
            layers = layers == null ? List.of() : List.copyOf(layers);
            fasteners = fasteners == null ? List.of() : List.copyOf(fasteners);
        }
    }

    /** All windows together. */
    public record Windows(
            @Quantity(
                    label = "Area",
                    unit = Unit.SQUARE_METRE,
                    min = 0,
                    max = 1000,
                    limitSource = PlausibleRange.SOURCE)
            double areaM2,

            @Quantity(
                    label = "U-value",
                    symbol = "U",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 0.1,
                    max = 8,
                    limitSource = PlausibleRange.SOURCE)
            double uValueWPerM2K,

            @Quantity(
                    label = "Solar gain",
                    symbol = "g",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double solarGainFraction) {}

    /** The outer membrane and the sun that it bears. */
    public record Membrane(
            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Days it may stand in the sun",
                    unit = Unit.ONE,
                    min = 1,
                    max = 3650,
                    limitSource = PlausibleRange.SOURCE)
            int sunLimitDays,

            @Entry(label = "Made for permanent sun") boolean permanentSun,

            @Quantity(
                    label = "Widest joint in front of it",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.2,
                    limitSource = PlausibleRange.SOURCE,
                    help = "From the membrane's data sheet; 0 where it must stand behind closed cladding.")
            @Nullable
            Double maxJointWidthM,

            @Quantity(
                    label = "Most open share in front of it",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE,
                    help = "From the membrane's data sheet.")
            @Nullable
            Double maxOpenFraction) {}

    /** One kind of fastener of an assembly. */
    public record Fastener(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Kind") FastenerKind kind,
            @Entry(label = "Metal") FastenerMetal metal,

            @Quantity(
                    label = "Diameter",
                    symbol = "D",
                    unit = Unit.SMALL_METRE,
                    min = 0.0005,
                    max = 0.03,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double diameterM,

            @Quantity(
                    label = "Length",
                    symbol = "L",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double lengthM,

            @Quantity(
                    label = "Penetration",
                    symbol = "p",
                    unit = Unit.SMALL_METRE,
                    min = 0,
                    max = 0.5,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Into the wood that holds it.")
            @Nullable
            Double penetrationM,

            @Quantity(
                    label = "Spacing",
                    unit = Unit.SMALL_METRE,
                    min = 0.02,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Along the batten or the stud.")
            @Nullable
            Double spacingM,

            @Quantity(
                    label = "Fasteners on a square metre",
                    symbol = "n_f",
                    unit = Unit.ONE,
                    min = 0,
                    max = 200,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double perSquareMetre,

            @Entry(
                    label = "Through the insulation of layer",
                    help = "The short name of the insulation that it bridges; empty for none.",
                    maxLength = 40)
            @Nullable
            String throughLayerId,

            @Quantity(
                    label = "Conductivity of the metal",
                    symbol = "λ_f",
                    unit = Unit.WATT_PER_METRE_KELVIN,
                    min = 0.01,
                    max = 500,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Stainless steel 17, steel 50.")
            @Nullable
            Double conductivityWPerMK) {}

    /** What holds. */
    public enum FastenerKind implements Labelled {
        PLAIN_NAIL("plain nail"),
        RING_SHANK_NAIL("ring-shank nail"),
        SCREW("screw");

        private final String label;

        FastenerKind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** What it is made of, for rust and for heat. */
    public enum FastenerMetal implements Labelled {
        BRIGHT_STEEL("bright steel"),
        ELECTROPLATED_STEEL("electroplated steel"),
        HOT_DIP_GALVANISED("hot-dip galvanised steel"),
        STAINLESS_304("stainless steel 304"),
        STAINLESS_316("stainless steel 316");

        private final String label;

        FastenerMetal(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** Enough of the shape to draw a section. */
    public record Form(
            @Quantity(label = "Length", unit = Unit.METRE, min = 1, max = 100, limitSource = PlausibleRange.SOURCE)
            double lengthM,

            @Quantity(label = "Width", unit = Unit.METRE, min = 1, max = 100, limitSource = PlausibleRange.SOURCE)
            double widthM,

            @Quantity(
                    label = "Height of the low wall",
                    unit = Unit.METRE,
                    min = 1,
                    max = 30,
                    limitSource = PlausibleRange.SOURCE)
            double lowWallHeightM,

            @Quantity(
                    label = "Height of the high wall",
                    unit = Unit.METRE,
                    min = 1,
                    max = 30,
                    limitSource = PlausibleRange.SOURCE)
            double highWallHeightM,

            @Quantity(label = "Storeys", unit = Unit.COUNT, min = 1, max = 6, limitSource = PlausibleRange.SOURCE)
            int storeyCount,

            @Entry(label = "Basement") boolean basement,
            @Entry(label = "Roof") RoofKind roofKind) {}
}
