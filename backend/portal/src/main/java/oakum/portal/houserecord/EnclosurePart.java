package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** What keeps weather out: walls, roof, floor, windows, outer membrane. */
public record EnclosurePart(
        @Entry(label = "Assemblies", maxRows = 30) List<Assembly> assemblies,
        @Entry(label = "Windows") @Nullable Windows windows,
        @Entry(label = "Outer membrane") @Nullable Membrane membrane,
        @Entry(label = "Form") @Nullable Form form)
        implements Part {
    public EnclosurePart {
        assemblies = assemblies == null ? List.of() : List.copyOf(assemblies);
    }

    /** Which face of the envelope. */
    public enum AssemblyKind implements Labelled {
        WALL("wall"),
        ROOF("roof"),
        SLAB("slab"),
        BASEMENT_WALL("basement wall");

        private final String label;

        AssemblyKind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
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
            List<ControlOfLayer> controls,

            @Entry(label = "Drawn as") Hatch drawAs) {
        public Layer {
            controls = controls == null ? List.of() : List.copyOf(controls);
        }
    }

    /** One thing that a layer controls. */
    public record ControlOfLayer(@Entry(label = "Control") Control control) {}

    /** What a layer holds back. */
    public enum Control implements Labelled {
        WATER("water"),
        AIR("air"),
        VAPOUR("vapour"),
        THERMAL("heat"),
        DRAIN("drains and dries"),
        RAIN("rain");

        private final String label;

        Control(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
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
            List<Layer> layers) {
        public Assembly {
            layers = layers == null ? List.of() : List.copyOf(layers);
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

            @Entry(label = "Made for permanent sun") boolean permanentSun) {}

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
