package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** What the local, hard-wired interlock has to do when the make-up air fails; ordered by weight. */
public enum InterlockAct implements Labelled {
    NOTHING("nothing: the house holds its limit without make-up air"),
    STOP_FOLLOWED("switch off every device that the make-up air follows"),
    NOT_ENOUGH("switching off what the make-up air follows is not enough");

    private final String label;

    InterlockAct(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
