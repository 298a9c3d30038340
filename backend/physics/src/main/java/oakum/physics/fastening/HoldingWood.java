package oakum.physics.fastening;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;
import org.jspecify.annotations.Nullable;

/** The wood that a fastener holds in. */
public enum HoldingWood implements Labelled {
    SPRUCE_PINE_FIR("spruce-pine-fir", 0.42, Citations.GRAVITY),
    DOUGLAS_FIR_LARCH("Douglas fir-larch", 0.50, Citations.GRAVITY),
    SOUTHERN_PINE("southern pine", 0.55, Citations.GRAVITY),
    HEM_FIR("hem-fir", 0.43, Citations.GRAVITY_MEMORY),
    CEDAR("cedar", 0.36, Citations.GRAVITY_MEMORY),
    PANEL("OSB or plywood", Double.NaN, Citations.PANEL),
    OTHER("other, with its specific gravity", Double.NaN, Citations.GRAVITY_MEMORY);

    private static final double PANEL_PLAIN = 0.40;
    private static final double PANEL_RING = 0.70;

    private final String label;
    private final double gravity;
    private final Source source;

    HoldingWood(String label, double gravity, Source source) {
        this.label = label;
        this.gravity = gravity;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return this == OTHER ? "" : source.printed();
    }

    /** Oven-dry specific gravity for a fastener; null where none is known. */
    public @Nullable Double gravityFor(Fastener fastener) {
        if (this == PANEL) {
            return switch (fastener) {
                case PLAIN_NAIL -> PANEL_PLAIN;
                case RING_SHANK_NAIL -> PANEL_RING;
                case SMOOTH_STAINLESS_NAIL, WOOD_SCREW, LAG_SCREW -> null;
            };
        }
        return Double.isNaN(gravity) ? null : (Double) gravity;
    }
}
