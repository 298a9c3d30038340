package oakum.portal.commissioning;

import java.util.Arrays;
import java.util.List;
import oakum.physics.calculation.Caution;
import oakum.portal.http.Problem;
import oakum.portal.people.Role;
import oakum.portal.site.SafetyCaution;

/** The setting-to-work sheets. */
enum Sheet {
    TIGHTNESS(
            "tightness",
            "Tightness test",
            "Finds how much air the house leaks, in both directions, on both volumes.",
            "Calibrated fan and two-channel gauge; flow within 5 %, pressure within 1 % or 0.25 Pa.",
            List.of(
                    "Doors and windows shut but not sealed, dampers shut, the ventilator's outside ducts shut and sealed,"
                            + " heating off, inside doors open.",
                    "Pressure with the fan covered, 60 seconds, before and after.",
                    "Seven to ten steps from about 60 down to 15 Pa, in both directions.",
                    "Not in strong wind; a large temperature difference disturbs."),
            Role.SITE_LEAD,
            SafetyCaution.COMBUSTION,
            SafetyCaution.CODE),
    FILTER_DROP(
            "filter-drop",
            "Filter drop and face velocity",
            "Keeps how a clean filter resists; filter load is counted from it.",
            "The same gauge; air flow by flow grid or by pressure matching with a calibrated fan.",
            List.of(
                    "A new filter, the arrow right, the coil dry.",
                    "Pressure drop at three flows: high, design and low, three readings each.",
                    "The face velocity is the flow over the open area of the filter's face."),
            Role.MECHANICAL_CONTRACTOR,
            SafetyCaution.ELECTRICAL),
    HOUSE_PRESSURE(
            "house-pressure",
            "House pressure, everything on",
            "Shows that the house holds its pressure with every exhaust device running, and what happens when make-up air"
                    + " fails.",
            "Gauge within 1 Pa from 5 to 50 Pa, calibrated within the year; the outdoor tap 3 m or more from the house;"
                    + " wind below 15 km/h, fluctuation 1 Pa or less.",
            List.of(
                    "Rest pressure with everything off.",
                    "Ventilation on as designed; leave it off where it raises the pressure.",
                    "Continuous exhaust, then hood high, bath boost and dryer; read.",
                    "Hold the make-up damper shut, read; then block the intake with the damper open, read.",
                    "Rest pressure again; the larger difference counts."),
            Role.MECHANICAL_CONTRACTOR,
            SafetyCaution.COMBUSTION,
            SafetyCaution.INTERLOCK,
            SafetyCaution.ELECTRICAL,
            SafetyCaution.CODE);

    private final String key;
    private final String title;
    private final String purpose;
    private final String instrument;
    private final List<String> steps;
    private final Role mender;
    private final List<SafetyCaution> cautions;

    Sheet(
            String key,
            String title,
            String purpose,
            String instrument,
            List<String> steps,
            Role mender,
            SafetyCaution... cautions) {
        this.key = key;
        this.title = title;
        this.purpose = purpose;
        this.instrument = instrument;
        this.steps = steps;
        this.mender = mender;
        this.cautions = List.of(cautions);
    }

    /**
     * The sheet of a key.
     *
     * @throws Problem 404
     */
    static Sheet of(String key) {
        return Arrays.stream(values())
                .filter(sheet -> sheet.key.equals(key))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("setting-to-work sheet", key));
    }

    String key() {
        return key;
    }

    String title() {
        return title;
    }

    String purpose() {
        return purpose;
    }

    String instrument() {
        return instrument;
    }

    List<String> steps() {
        return steps;
    }

    /** Who mends what does not fit. */
    Role mender() {
        return mender;
    }

    List<Caution> cautions() {
        return cautions.stream().map(SafetyCaution::caution).toList();
    }
}
