package oakum.portal.site;

import oakum.physics.calculation.Labelled;

/** Which photos a row asks for before it may be signed. */
public enum PhotoRule implements Labelled {
    NONE("no photo", 0),
    /** The number itself is what is kept. */
    LOG("the reading is kept; a photo if you like", 0),
    ONE("one photo", 1),
    TWO("two photos: one wide with the location card, one close with a scale", 2),
    ALL("a photo of every one, with the location card", 1),
    VIDEO("photos that show it happen: before and after", 2);

    private final String label;
    private final int least;

    PhotoRule(String label, int least) {
        this.label = label;
        this.least = least;
    }

    @Override
    public String label() {
        return label;
    }

    /** The least number of photos. */
    public int least() {
        return least;
    }
}
