package oakum.physics.fastening;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source PLAIN = Source.seen("NDS-2018 eq. 12.2-3, plain shank nails; FPL Research Note FPL-093");
    static final Source RING = Source.fromMemory("NDS-2018 eq. 12.2-5, ring-shank nails of ASTM F1667");
    static final Source STAINLESS = Source.fromMemory("NDS-2018 eq. 12.2-4, smooth stainless nails");
    static final Source WOOD_SCREW = Source.fromMemory("NDS-2018 eq. 12.2-2, wood screws");
    static final Source LAG = Source.seen("NDS-2018 eq. 12.2-1, lag screws, as an open verification test quotes it");
    static final Source MOISTURE = Source.seen(
            "letter of USDA and AWC engineers: plain nails keep a quarter where" + " moisture passes through 19 %");
    static final Source FACTORS = Source.fromMemory(
            "NDS-2018 ch. 11 and 12, factors of duration, wet service, temperature," + " end grain and toe-nailing");
    static final Source HEAD =
            Source.seen("AWC list of changes to the NDS-2018: head pull-through is a check of its own");
    static final Source GRAVITY = Source.seen("AWC solved examples: SPF 0.42, DF-L 0.50, SP 0.55");
    static final Source GRAVITY_MEMORY = Source.fromMemory("NDS-2018 table 12.3.3A, specific gravity");
    static final Source PANEL =
            Source.seen("abstract of a panel study: equivalent gravity of OSB and plywood 0.40 plain, 0.70 ring-shank");
    static final Source WIND =
            Source.seen("ASCE 7-16 eq. 28.3-1 and components and cladding of walls, h ≤ 60 ft, as open"
                    + " academic code reproduces them");
    static final Source WIND_MEMORY = Source.fromMemory(
            "ASCE 7-16, least Kh of 0.70 in exposure B and least pressure of" + " 16 psf for cladding");
    static final Source EQUALISING =
            Source.seen("review of Western University (2024), abstract: no general design value"
                    + " for pressure equalisation of air-permeable cladding");
    static final Source TREATED = Source.fromMemory("IRC R317.3, fasteners in treated wood");
    static final Source TANNIC = Source.commonPractice(
            "stainless 304 at least in cedar, redwood, oak, chestnut and thermally modified wood");
    static final Source COAST =
            Source.commonPractice("stainless 316 within 1 to 5 km of salt water; coastal guidance" + " counts 3000 ft");
    static final Source OUTDOORS = Source.commonPractice("hot-dip galvanised at least outdoors");
    static final Source MIXED = Source.commonPractice("no two metals in one wet joint");
    static final Source FOAM =
            Source.seen("IRC R703.15.2, summary: horizontal furring over foam is preservative-treated,"
                    + " with corrosion-resistant fasteners");
    static final Source FURRING = Source.seen(
            "US building research report BA-1404, summary; IRC R703.15 and ANSI/ABTG" + " FS200.1 hold the tables");
    static final Source FURRING_LIMIT = Source.fromMemory("limit of 1/16 in. used in BA-1404");
    static final Source PENETRATION = Source.fromMemory("furring fasteners 1 1/2 in. into studs, IRC 1 1/4 in.");
    static final Source BEAM = Source.proposed("screw as a beam guided at both ends, steel of 200 GPa");
    static final String PLAUSIBLE = "plausible range, proposed here";

    private Citations() {}
}
