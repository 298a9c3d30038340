package oakum.physics.envelope;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source COMBINED =
            Source.seen("ISO 6946 clause 6.7.2, combined method, in a government guide's worked examples");
    static final Source SURFACES = Source.seen("ISO 6946:2007 table 1 and clause 5.3, in an open copy");
    static final Source VENTILATED = Source.fromMemory("ISO 6946:2017 clause 6.9, ventilated air layers");
    static final Source CORRECTIONS = Source.fromMemory("ISO 6946:2017 Annex F, corrections");
    static final Source HANDBOOK = Source.fromMemory("ASHRAE Fundamentals ch. 25, parallel path and isothermal planes");
    static final Source FRAMING =
            Source.seen("two trade articles: 0.23 to 0.25 typical, 0.15 reachable with advanced framing");
    static final Source ORDER = Source.commonPractice("vapour-tight layers lie on the warm side in cold climates");
    static final Source DRYING =
            Source.commonPractice("in cold climates outside at most a fifth of the diffusion thickness inside");
    static final Source FACTOR = Source.fromMemory("ISO 13788:2012 clause 5, surface temperature factor");
    static final Source NATIONAL_FACTORS = Source.seen(
            "0.75 British guidance, 0.72 Polish rule text; 0.70 German" + " standard DIN 4108-2 from memory");
    static final Source BRIDGES = Source.seen("ISO 13789 Annex B and ISO 14683, as a guide quotes them");
    static final Source TRANSMISSION = Source.fromMemory("ISO 13789:2017 eq. 2, direct transmission");
    static final Source MONTHLY = Source.fromMemory("ISO 13788:2012 clause 6, monthly method");
    static final Source SATURATION = Source.seen("ISO 13788 Annex E, saturation pressure, in several open copies");
    static final Source PERMEABILITY =
            Source.seen("ISO 13788: vapour permeability of air 2e-10 kg/(m s Pa), in open code");
    static final Source CLASSES = Source.fromMemory("ISO 13788 Annex A, humidity classes");
    static final Source CONTINENTAL = Source.fromMemory("EN 15026 Annex C, continental indoor climate");
    static final Source RUN_OFF = Source.fromMemory("ISO 13788: risk of run-off above 0.2 kg/m²");
    static final Source BLOCK = Source.fromMemory("DIN 4108-3:2001, winter and summer blocks");
    static final Source PROFILE = Source.fromMemory("ASHRAE Fundamentals ch. 27, dew-point method");
    static final Source CUPS = Source.fromMemory("ISO 10456: dry cup below a mean of 70 %, wet cup from there");
    static final Source PROPOSED = Source.proposed("this calculation");

    private Citations() {}
}
