package oakum.physics.material;

import oakum.physics.calculation.Labelled;

/** How conductivity rises with water. Beyond the range each is known for, the supplement stays as at its end. */
public enum MoistureSupplement implements Labelled {
    NONE("none", Double.POSITIVE_INFINITY, ""),
    /** λ · exp(f ψ), ψ in m³ of water per m³ of material. */
    BY_VOLUME("exp(f·ψ), ψ in m³/m³, to 0.15", 0.15, "ISO 10456:2007 eq. 4 and table 4, from memory"),
    /** λ · exp(f u), u in kg of water per kg of dry material. */
    BY_MASS("exp(f·u), u in kg/kg, to 0.2", 0.20, "ISO 10456:2007 eq. 4 and table 4, from memory"),
    /** λ + 0.4064 G u: the slope of the wood equation, G the specific gravity; the coefficient is not used. */
    WOOD("wood equation, to 0.25 kg/kg", 0.25, "Wood Handbook FPL-GTR-190 eq. 4-15, seen in a copy");

    private static final double WOOD_SLOPE = 0.4064;
    private static final double WATER_KG_PER_M3 = 1000;

    private final String label;
    private final double range;
    private final String source;

    MoistureSupplement(String label, double range, String source) {
        this.label = label;
        this.range = range;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return source;
    }

    /**
     * Conductivity at a water content from that at a reference water content.
     *
     * @param conductivityWPerMK at the reference
     * @param coefficient f
     * @param densityKgPerM3 of the dry material; of no effect where the supplement goes by volume
     * @param waterKgPerM3 at least 0
     * @param referenceKgPerM3 at least 0
     */
    double conductivityWPerMK(
            double conductivityWPerMK,
            double coefficient,
            double densityKgPerM3,
            double waterKgPerM3,
            double referenceKgPerM3) {
        double per = this == BY_VOLUME ? WATER_KG_PER_M3 : densityKgPerM3;
        double change = Math.min(waterKgPerM3 / per, range) - Math.min(referenceKgPerM3 / per, range);
        return switch (this) {
            case NONE -> conductivityWPerMK;
            case BY_VOLUME, BY_MASS -> conductivityWPerMK * Math.exp(coefficient * change);
            case WOOD -> conductivityWPerMK + WOOD_SLOPE * densityKgPerM3 / WATER_KG_PER_M3 * change;
        };
    }
}
