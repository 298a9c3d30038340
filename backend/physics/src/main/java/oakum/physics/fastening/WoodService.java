package oakum.physics.fastening;

import oakum.physics.calculation.Labelled;

/** Moisture of the wood that holds, from the day it is nailed. */
public enum WoodService implements Labelled {
    DRY("at or below 19 % always"),
    PASSES_19_PERCENT("passes through 19 %: nailed green, or wetted and dried"),
    WET("above 19 % always");

    private final String label;

    WoodService(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
