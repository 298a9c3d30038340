package oakum.physics.housepressure;

import oakum.physics.calculation.Caution;

/** What can hurt someone when a tight house is pulled below outdoors, or its make-up air is heated. */
final class Cautions {
    static final Caution COMBUSTION = new Caution(
            "Combustion",
            "Suction can draw flue gas into the rooms. An appliance that takes air from the rooms changes every limit on"
                    + " this page. CO alarms are required where the code says; they are no substitute for a spillage test"
                    + " by someone trained for it.");

    static final Caution INTERLOCK = new Caution(
            "Interlock",
            "The interlock of exhaust and make-up air is local and hard-wired; it must work with the network down. The"
                    + " portal reads; it does not protect.");

    static final Caution ELECTRICAL = new Caution(
            "Electrical",
            "Currents here are loads. A licensed electrician sizes and wires circuits under the adopted code. Lock out"
                    + " before opening.");

    static final Caution GAS = new Caution(
            "Gas",
            "Work on gas pipes and appliances is licensed work. Smell gas: leave, do not switch,"
                    + " call from outside.");

    static final Caution WEATHER = new Caution(
            "Weather",
            "Wind and the pull of warm air in the house are not in this number; below 1 Pa they rule. The house is"
                    + " measured when it is set to work.");

    static final Caution FIRE = new Caution(
            "Fire",
            "Lint in a long or slow dryer duct is a fire hazard. The maker's instructions and the adopted code"
                    + " govern length, material and booster fans.");

    private Cautions() {}
}
