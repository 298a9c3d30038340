package oakum.physics.wood;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source EQUILIBRIUM = Source.seen("USDA Wood Handbook FPL-GTR-190 eq. 4-5 and table 4-2 (Simpson 1998),"
            + " as public copies reproduce them");
    static final Source SHRINKAGE =
            Source.seen("USDA Wood Handbook FPL-GTR-190 table 4-3 and eq. 4-7, shrinkage from green to oven dry");
    static final Source MOVEMENT =
            Source.seen("USDA Wood Handbook FPL-GTR-190 table 13-5, dimensional change coefficients, 6 to 14 %");
    static final Source ESTIMATED = Source.proposed(
            "coefficient estimated as shrinkage in % over 2850, the mean ratio of" + " six listed species");
    static final Source THERMAL =
            Source.seen("USDA Wood Handbook FPL-GTR-190 eq. 4-15 to 4-17, as a public copy reproduces them");
    static final Source FRAMING = Source.seen("USDA research paper FPL-RP-489, framing lumber, 8 to 19 % moisture");
    static final Source CUP = Source.proposed("plane geometry of a free board");
    static final Source SHARING =
            Source.commonPractice("boards of a room share its movement unevenly; a sum is no promise");
    static final Source PRACTICAL =
            Source.seen("USDA FPL-GTR-229, abstract: equilibrium moisture data are for practical"
                    + " use, species and history move them by 1 to 2 % moisture");
    static final String PLAUSIBLE = "plausible range, proposed here";
    static final String FIT = "the fit is for about -1 to 130 °C and is used down to -20 °C";

    private Citations() {}
}
