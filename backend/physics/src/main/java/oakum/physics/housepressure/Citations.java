package oakum.physics.housepressure;

import oakum.physics.calculation.Source;

/** The sources of this package, each named once. */
final class Citations {
    static final Source POWER_LAW = Source.fromMemory("ISO 9972 and ASTM E779, envelope flow as a power law");
    static final Source GUM =
            Source.fromMemory("GUM, JCGM 100:2008, 5.1.2: independent parts of an uncertainty add in quadrature");
    static final Source FAN_CURVE =
            Source.commonPractice("quadratic fan curve through rated flow and shut-off pressure");
    static final Source ORIFICE = Source.fromMemory("ASHRAE Fundamentals ch. 16, flow through a sharp-edged opening");
    static final Source DUCTS = Source.fromMemory("ASHRAE Fundamentals ch. 21, Darcy-Weisbach and Colebrook");
    static final Source AIR = Source.fromMemory("ASHRAE Fundamentals ch. 1, standard atmosphere and specific volume");
    static final Source HEAT =
            Source.fromMemory("ASHRAE Fundamentals ch. 1, sensible heat of dry air, cp 1006 J/(kg K)");
    static final Source DOOR = Source.seen("IBC 909.6.2, as adopted by a city code, door opening force");
    static final Source MINNESOTA = Source.seen("Minn. R. 1346.0501, table 501.4.1 and permit forms of its cities");
    static final Source IRC_2018 = Source.seen("IRC M1503.6 (2018 on), in a state and a city adoption");
    static final Source IRC_DRYER = Source.fromMemory("IFGC and IRC G2439.5, dryers above 200 cfm");
    static final Source DRYER_AIR = Source.seen("Minn. R. 1346.0501, table 501.4.1: 135 cfm design value for a dryer");
    static final Source BALANCE_PRACTICE = Source.fromMemory("ventilator balance within 10 %, certification practice");
    static final Source OUTLET_PRACTICE = Source.commonPractice("300 to 500 fpm at the cook's feet");
    static final Source PROPOSED = Source.proposed("this calculation");

    private Citations() {}
}
