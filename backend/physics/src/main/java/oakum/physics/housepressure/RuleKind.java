package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** What a rule of a place is about. */
public enum RuleKind implements Labelled {
    MAKE_UP_TRIGGER("when make-up air is required"),
    HOUSE_PRESSURE("how far below outdoors a house may be"),
    PASSIVE_OPENING("passive make-up openings"),
    DRYER("dryers and their ducts"),
    DOOR("force to open a door"),
    OUTLET("make-up air outlets"),
    INTERLOCK("interlock of exhaust and make-up air");

    private final String label;

    RuleKind(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
