package oakum.portal.site;

import oakum.physics.calculation.Labelled;

/** Who looks at a row with their own eyes; some of them have no account. */
public enum SeenBy implements Labelled {
    SITE_LEAD("site lead"),
    MECHANICAL_CONTRACTOR("mechanical contractor"),
    PRINCIPAL("principal"),
    LICENSED_TRADE("licensed trade"),
    INDEPENDENT_TESTER("independent tester");

    private final String label;

    SeenBy(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
