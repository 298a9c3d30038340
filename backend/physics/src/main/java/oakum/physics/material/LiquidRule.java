package oakum.physics.material;

import oakum.physics.calculation.Labelled;

/**
 * How capillary transport is counted. A vapour resistance that falls with humidity already holds the liquid that moves
 * below about 95 % relative humidity, so the two must not both be counted there.
 */
public enum LiquidRule implements Labelled {
    /** The resistance falls with humidity; liquid moves only above 95 % relative humidity. */
    ABOVE_95_PERCENT("vapour resistance falls with humidity, liquid only above 95 %"),
    /** The dry-cup resistance holds everywhere and liquid moves at every water content. */
    WHOLE_RANGE("dry-cup vapour resistance, liquid at every water content"),
    /** No liquid moves. */
    NONE("no liquid transport");

    private final String label;

    LiquidRule(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return "common practice, no published source";
    }
}
