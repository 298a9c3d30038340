package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;

/** Where the humidity indoors comes from. */
public enum IndoorHumidity implements Labelled {
    OWN("as typed, month by month", 0, Citations.PROPOSED),
    CLASS_1("class 1: stores", 270, Citations.CLASSES),
    CLASS_2("class 2: dwellings, normal occupancy and ventilation", 540, Citations.CLASSES),
    CLASS_3("class 3: dwellings, occupancy unknown", 810, Citations.CLASSES),
    CLASS_4("class 4: sports halls, kitchens", 1080, Citations.CLASSES),
    CLASS_5("class 5: special, such as pools", 1360, Citations.CLASSES),
    CONTINENTAL_NORMAL("continental, 30 % in the cold to 60 %", 0, Citations.CONTINENTAL),
    CONTINENTAL_HIGH("continental, 40 % in the cold to 70 %", 0, Citations.CONTINENTAL);

    private final String label;
    private final double excessPa;
    private final Source source;

    IndoorHumidity(String label, double excessPa, Source source) {
        this.label = label;
        this.excessPa = excessPa;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return source.printed();
    }

    /** Vapour pressure indoors above outdoors of a class: whole at 0 °C and below, none from 20 °C. */
    double excessPa(double outdoorC) {
        return excessPa * Math.min(1, Math.max(0, 1 - outdoorC / 20));
    }

    /** Relative humidity of the continental climates, from −10 to 20 °C rising by 30 %. */
    double continentalFraction(double outdoorC) {
        double driest = this == CONTINENTAL_HIGH ? 0.40 : 0.30;
        return driest + 0.30 * Math.min(1, Math.max(0, (outdoorC + 10) / 30));
    }

    boolean isContinental() {
        return this == CONTINENTAL_NORMAL || this == CONTINENTAL_HIGH;
    }
}
