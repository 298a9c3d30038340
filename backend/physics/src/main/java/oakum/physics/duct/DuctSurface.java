package oakum.physics.duct;

import oakum.physics.calculation.Labelled;

/** What a duct is made of, with its roughness. */
public enum DuctSurface implements Labelled {
    SMOOTH("smooth plastic or drawn metal", 0.03e-3),
    GALVANISED("galvanised steel, round spiral", 0.09e-3),
    OLD_GALVANISED("galvanised steel, older", 0.15e-3),
    FLEXIBLE_EXTENDED("flexible duct, fully extended", 0.9e-3);

    private final String label;
    private final double roughnessM;

    DuctSurface(String label, double roughnessM) {
        this.label = label;
        this.roughnessM = roughnessM;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return "Roughness " + roughnessM * 1000 + " mm, ASHRAE Fundamentals ch. 21 (from memory)";
    }

    /** Absolute roughness ε in metres. */
    public double roughnessM() {
        return roughnessM;
    }
}
