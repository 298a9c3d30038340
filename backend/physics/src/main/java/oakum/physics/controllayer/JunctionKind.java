package oakum.physics.controllayer;

import oakum.physics.calculation.Labelled;

/** Where two faces of the envelope meet. */
public enum JunctionKind implements Labelled {
    SLAB_EDGE("footing and slab edge"),
    FOUNDATION_WALL("foundation wall"),
    SILL("sill on the foundation"),
    FLOOR_EDGE("rim of a floor"),
    OUTSIDE_CORNER("outside corner"),
    WINDOW_SILL("window sill"),
    WINDOW_JAMB_HEAD("window jamb and head"),
    DOOR_THRESHOLD("door threshold"),
    WALL_TO_ATTIC("wall to vented attic"),
    WALL_TO_RAFTERS("wall to insulated rafters"),
    LEDGER("porch roof or deck ledger"),
    OTHER("another");

    private final String label;

    JunctionKind(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
