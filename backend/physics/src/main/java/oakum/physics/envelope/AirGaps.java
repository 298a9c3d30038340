package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** Gaps in the insulation, and what they add to the U-value before they are scaled (ISO 6946 Annex F). */
public enum AirGaps implements Labelled {
    NONE("none, or only small ones", 0),
    WARM_TO_COLD("gaps that reach from the warm to the cold side", 0.01),
    WITH_AIR_MOVING("such gaps, and air moving around the insulation", 0.04);

    private final String label;
    private final double addedWPerM2K;

    AirGaps(String label, double addedWPerM2K) {
        this.label = label;
        this.addedWPerM2K = addedWPerM2K;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return Citations.CORRECTIONS.printed();
    }

    /**
     * ΔU_g = ΔU''·(R_1/R_tot)².
     *
     * @param share of the insulation's resistance in the whole
     */
    double addedWPerM2K(double share) {
        return addedWPerM2K * share * share;
    }
}
