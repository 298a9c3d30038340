package oakum.portal.site;

import oakum.physics.calculation.Caution;

/** What can hurt someone on site and while setting a house to work; general words, local codes and trades decide. */
public enum SafetyCaution {
    COMBUSTION(
            "Combustion",
            "With an appliance in the house that takes air from the rooms, only someone trained for it makes the worst-case"
                    + " test: stop on a reading of carbon monoxide, open the doors, call the licensed trade. While"
                    + " air-sealing such a house, check the combustion zone at the end of each workday. Carbon monoxide"
                    + " alarms are no substitute for the test."),
    HEIGHT(
            "Work at height",
            "Heights, attics, trenches, lead and silica dust: follow the site safety plan. A photo is never worth a fall."),
    MOULD(
            "Mould and health",
            "The record reports dampness and drying. It does not diagnose health or declare a place free of mould. If"
                    + " someone is unwell, see a doctor; for large growth, a qualified assessor."),
    REFRIGERANT(
            "Refrigerant",
            "Opening the circuit needs certification; new refrigerants can burn; charge and room size follow the maker and"
                    + " the code."),
    WATER_HEATER(
            "Water heater",
            "Hot water scalds. A relief valve is never plugged, and the pan is no discharge for it. Work on it is licensed"
                    + " work."),
    ALARMS(
            "Alarms",
            "Alarms are a help, not a protection: power, radio and phones fail. Insurance terms decide what is asked."),
    INTERLOCK(
            "Interlocks",
            "The portal reads; it does not protect. Interlocks of hood, damper and heater are local and hard-wired and must"
                    + " work with the network down."),
    ELECTRICAL(
            "Electrical",
            "Work on circuits is for a licensed electrician under the adopted code. Lock out before opening."),
    CODE(Caution.CODE_AUTHORITY.subject(), Caution.CODE_AUTHORITY.text());

    private final Caution caution;

    SafetyCaution(String subject, String text) {
        this.caution = new Caution(subject, text);
    }

    public Caution caution() {
        return caution;
    }
}
