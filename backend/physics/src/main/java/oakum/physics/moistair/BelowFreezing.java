package oakum.physics.moistair;

import oakum.physics.calculation.Labelled;

/**
 * What relative humidity and dew point are counted against below freezing. At −20 °C the two differ by a fifth, so every
 * source of readings must say which it means.
 */
public enum BelowFreezing implements Labelled {
    OVER_ICE("over ice", "ASHRAE Fundamentals ch. 1, tables of moist air"),
    OVER_WATER(
            "over water (weather services)",
            "WMO-No. 8, Guide to Instruments and Methods of Observation, part I ch. 4");

    private final String label;
    private final String source;

    BelowFreezing(String label, String source) {
        this.label = label;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return source;
    }
}
