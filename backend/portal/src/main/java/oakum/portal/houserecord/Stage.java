package oakum.portal.houserecord;

import oakum.physics.calculation.Labelled;

/** How far a house has come. */
public enum Stage implements Labelled {
    FIRST_TALK("first talk"),
    CONCEPT("concept"),
    DESIGN("in design"),
    CHOICES("choices and buying"),
    READY("permit and ready"),
    GROUNDWORKS("groundworks"),
    FRAME("frame and dry-in"),
    CLOSE_UP("close-up"),
    FINISHES("finishes"),
    SETTING_TO_WORK("setting to work"),
    HANDOVER("handover"),
    FIRST_YEAR("first year"),
    LATER("second year and on");

    private final String label;

    Stage(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
