package oakum.physics.material;

import oakum.physics.calculation.Labelled;

/** How readily mould grows on a material (sensitivity classes of the Finnish mould model, 2010). */
public enum MouldSensitivity implements Labelled {
    VERY_SENSITIVE("very sensitive, as untreated pine sapwood"),
    SENSITIVE("sensitive, as planed spruce, wood-based boards, paper"),
    MEDIUM_RESISTANT("medium resistant, as concrete, mineral wool"),
    RESISTANT("resistant, as metal, glass");

    private final String label;

    MouldSensitivity(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return "sensitivity classes of the mould model of 2010, seen in two open implementations";
    }
}
