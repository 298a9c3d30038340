package oakum.portal.site;

import oakum.physics.calculation.Labelled;

/** The three answers of a row. */
public enum RowAnswer implements Labelled {
    RIGHT("Seen, right"),
    NOT_RIGHT("Not right"),
    NOT_HERE("not in this house");

    private final String label;

    RowAnswer(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
