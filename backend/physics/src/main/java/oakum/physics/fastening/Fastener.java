package oakum.physics.fastening;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;

/** A fastener and how it holds against being pulled out of side grain (NDS-2018 ch. 12). */
public enum Fastener implements Labelled {
    PLAIN_NAIL("plain shank nail, bright or galvanised", 1380, 2.5, 1, Citations.PLAIN),
    RING_SHANK_NAIL("ring-shank nail of ASTM F1667", 1800, 2, 1, Citations.RING),
    SMOOTH_STAINLESS_NAIL("smooth stainless nail", 465, 1.5, 1, Citations.STAINLESS),
    WOOD_SCREW("wood screw", 2850, 2, 1, Citations.WOOD_SCREW),
    LAG_SCREW("lag screw", 1800, 1.5, 0.75, Citations.LAG);

    private final String label;
    private final double factor;
    private final double gravityExponent;
    private final double diameterExponent;
    private final Source source;

    Fastener(String label, double factor, double gravityExponent, double diameterExponent, Source source) {
        this.label = label;
        this.factor = factor;
        this.gravityExponent = gravityExponent;
        this.diameterExponent = diameterExponent;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return source.printed();
    }

    /**
     * Reference withdrawal value for each metre of penetration, before any adjustment.
     *
     * @param gravity oven-dry specific gravity of the wood that holds, 0.3 to 0.9
     * @param diameterM of the shank, above 0
     */
    public double withdrawalNPerM(double gravity, double diameterM) {
        return Imperial.POUND_PER_INCH_N_PER_M
                * factor
                * Math.pow(gravity, gravityExponent)
                * Math.pow(diameterM / Imperial.INCH_M, diameterExponent);
    }

    boolean isNail() {
        return this == PLAIN_NAIL || this == RING_SHANK_NAIL || this == SMOOTH_STAINLESS_NAIL;
    }

    /** Whether only a threaded or ringed part holds. */
    boolean holdsByThread() {
        return this == RING_SHANK_NAIL || this == WOOD_SCREW || this == LAG_SCREW;
    }

    /** What is left where the wood is wet or passes through 19 %. */
    double moistureFactor(WoodService service) {
        if (service == WoodService.DRY || this == RING_SHANK_NAIL) {
            return 1;
        }
        if (!isNail()) {
            return 0.7;
        }
        return service == WoodService.PASSES_19_PERCENT ? 0.25 : 1;
    }
}
