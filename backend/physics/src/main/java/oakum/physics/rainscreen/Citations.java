package oakum.physics.rainscreen;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source FLOW = Source.fromMemory("flow between parallel plates and through sharp-edged openings, as"
            + " published for ventilated claddings (Q = 4611 γ b d³ Δp/h)");
    static final Source TURBULENT =
            Source.commonPractice("Blasius friction on twice the depth, the larger of laminar and turbulent loss");
    static final Source DRIVE = Source.fromMemory(
            "stack pressure of two air columns; wind coefficient difference of 0.05" + " to 0.2 within one wall face");
    static final Source SUN = Source.proposed("heat balance of air along the cavity");
    static final Source SOL_AIR = Source.fromMemory("sol-air temperature, combined film of 17 W/(m² K)");
    static final Source DRYING = Source.proposed(
            "vapour balance of the cavity air; an upper bound, the wet surface taken" + " at cavity temperature");
    static final Source PERMEANCE = Source.seen(
            "thesis of the University of Waterloo, abstract: ventilation raises effective vapour permeance");
    static final Source MEASURED =
            Source.seen("Langmans et al. 2016, abstract: brick veneer 1 to 10 air changes an hour,"
                    + " siding on battens 100 to 1000");
    static final Source ISO_6946 = Source.fromMemory("ISO 6946, ventilation of air layers by opening area");
    static final Source GERMAN = Source.fromMemory("German practice: 5000 mm² per metre and a gap of 20 mm");
    static final Source TDCA = Source.seen("TDCA timber cladding design pages");
    static final Source BS_8605 = Source.seen("BS 8605-1 board proportions, as the TDCA pages quote them");
    static final Source CAPILLARY =
            Source.seen("trade article on Canadian codes: capillary break of 10 mm, some wet" + " regions 19 mm");
    static final Source BOTTOM = Source.commonPractice(
            "the bottom edge drains: membrane lapped over the flashing like" + " shingles and open at its lower edge");
    static final Source DRAINAGE = Source.commonPractice("an unbroken way down, sill and head flashings with end dams");
    static final Source MESH = Source.commonPractice("an untested mesh leaves 40 to 60 % of the opening free");
    static final Source SPAN = Source.commonPractice("a board is held by two supports at least");
    static final Source MEMBRANE = Source.commonPractice(
            "the maker's own limits of joint, open share and sun days count;" + " no open standard gives them");
    static final Source EN_13859 =
            Source.fromMemory("EN 13859-2, ageing of 5000 h UV for walls that do not shut it out");
    static final Source OPEN_JOINTS =
            Source.seen("TDCA timber cladding design pages: open joints let rain and sun to the"
                    + " membrane and bypass fire barriers");
    static final Source PROPOSED = Source.proposed("this calculation");
    static final String PLAUSIBLE = "plausible range, proposed here";

    private Citations() {}
}
