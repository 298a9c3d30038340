package oakum.physics.exposure;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;

/** How much more vapour the air inside holds than outside, by use (ISO 13788, internal humidity classes). */
public enum HumidityClass implements Labelled {
    UNOCCUPIED("1, unoccupied, dry stores", 270),
    DWELLING("2, dwelling with usual occupancy and ventilation", 540),
    UNKNOWN("3, occupancy unknown", 810),
    KITCHEN("4, sports hall, kitchen", 1080),
    SPECIAL("5, laundry, brewery, swimming pool", 1360);

    static final Source SOURCE = Source.fromMemory("ISO 13788:2012 Annex A, internal humidity classes");
    private static final double NONE_FROM_C = 20;

    private final String label;
    private final double excessPa;

    HumidityClass(String label, double excessPa) {
        this.label = label;
        this.excessPa = excessPa;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return SOURCE.printed();
    }

    /** Vapour pressure inside above that outside, Pa: the upper limit of the class at 0 °C, nothing from 20 °C. */
    public double excessPa(double outdoorTemperatureC) {
        return excessPa * Math.max(0, Math.min(1, 1 - outdoorTemperatureC / NONE_FROM_C));
    }
}
