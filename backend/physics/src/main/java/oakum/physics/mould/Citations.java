package oakum.physics.mould;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source PINE = Source.seen("Hukka and Viitanen 1999, A mathematical model of mould growth on wooden"
            + " material, Wood Science and Technology 33, as two open implementations of universities reproduce it");
    static final Source CLASSES =
            Source.seen("Ojanen, Viitanen et al. 2010, Mold growth modeling of building structures"
                    + " using sensitivity classes of materials, Buildings XI, as an open implementation reproduces it");
    static final Source DECLINE =
            Source.fromMemory("Ojanen, Viitanen et al. 2010, relative decline 1, 0.5, 0.25 or 0.1 of that of pine");
    static final Source CRITERION_2009 =
            Source.seen("ASTM STP 1599 (2017), abstract on the mould criterion of ASHRAE 160-2009");
    static final Source CRITERION_2016 =
            Source.fromMemory("ASHRAE 160-2016, mould index below 3.0, decline 0.1 unless tested");
    static final Source CORROSION = Source.fromMemory("ASHRAE 160, corrosion of metals, 30-day mean humidity");
    static final Source DECAY =
            Source.fromMemory("Viitanen et al. 2010, Towards modelling of decay risk of wooden materials, Eur. J. Wood"
                    + " Prod. 68, brown rot in pine sapwood");
    static final Source MOISTURE = Source.seen("trade literature on decay: most fungi need at least 20 % moisture, new"
            + " infection at about 29 %, spread down to about 20 %");
    static final Source PERSISTENCE =
            Source.commonPractice("wood above 20 % for more than 30 days above freezing is warned of");
    static final Source PROPOSED = Source.proposed("this calculation");
    static final String PLAUSIBLE = "plausible range, proposed here";

    private Citations() {}
}
