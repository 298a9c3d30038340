package oakum.physics.exposure;

/** Where the limits of the inputs here come from. */
final class InputRange {
    static final String WEATHER = "wider than any weather recorded on earth";
    static final String SHARE = "a share lies between 0 and 1, by definition";
    static final String ANGLE = "definition of the angle";
    static final String HOUSE = "wider than any house; common practice, no published source";
    static final String INDOOR = "wider than any indoor air; common practice, no published source";
    static final String SUNLIGHT = "the sun above the air is at most 1414 W/m²";

    private InputRange() {}
}
