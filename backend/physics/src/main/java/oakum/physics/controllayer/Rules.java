package oakum.physics.controllayer;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Rules {
    static final String PLAUSIBLE = "plausible range for a house, proposed by the project";
    static final Source SAME_LAYER =
            Source.commonPractice("the same layer is named on both sides of each junction; a gap is an error");
    static final Source HOLES = Source.commonPractice("list of holes through the air layer, each with its seal");
    static final Source THERMAL_BREAK =
            Source.commonPractice("edge insulation without concrete, steel or framing through it");
    static final Source DRAINING_EDGE =
            Source.commonPractice("a membrane is lapped over the flashing and never sealed at its lower edge");
    static final Source TIMBER_CLADDING =
            Source.seen("design pages of the British timber cladding association, after BS 8605-1");
    static final Source OPEN_JOINTS = Source.commonPractice(
            "no open standard with a numeric joint share was found: the membrane's own limits are asked for");
    static final Source SUN_DAYS = Source.commonPractice("product limit, counted from the day of fixing");
    static final Source ONE_SIDE_OPEN =
            Source.commonPractice("inside tighter than outside, and one side open to dry; five to one in the cold");
    static final Source TIGHT = Source.fromMemory(
            "vapour retarder classes by dry cup of ASTM E96: class II ends at 1 perm, an air layer of 3.5 m");
    static final Source WARM_SIDE = Source.commonPractice("the vapour layer lies on the warm side of the insulation");
    static final Source RAIN_OUTERMOST =
            Source.commonPractice("cladding, drained cavity, membrane: rain is met from outside to inside");
    static final Source CAPILLARY_BREAK =
            Source.seen("Canadian capillary break of 10 mm behind cladding, in a trade article");
    static final Source INSECTS = TIMBER_CLADDING;

    private Rules() {}
}
