package oakum.physics.hygrothermal;

import oakum.physics.calculation.Labelled;
import oakum.physics.exposure.HumidityClass;
import oakum.physics.exposure.IndoorClimate;
import org.jspecify.annotations.Nullable;

/** Where the humidity of the air inside comes from. */
public enum IndoorKind implements Labelled {
    CONSTANT("one temperature and humidity all year", "typed"),
    WINTER_CURVE("a humidity that follows the outdoor temperature, point by point", "typed"),
    CLASS_DWELLING("class 2 of ISO 13788, dwelling with usual occupancy", HumidityClass.DWELLING.source()),
    CLASS_UNKNOWN("class 3 of ISO 13788, occupancy unknown", HumidityClass.UNKNOWN.source()),
    CLASS_KITCHEN("class 4 of ISO 13788, kitchen, sports hall", HumidityClass.KITCHEN.source()),
    NORMAL_LOAD("EN 15026, normal moisture load", IndoorClimate.Continental.NORMAL.source()),
    HIGH_LOAD("EN 15026, high moisture load", IndoorClimate.Continental.HIGH.source()),
    DESIGN_SIMPLIFIED("ASHRAE 160, simplified method", "ANSI/ASHRAE 160, section 4.3.1, from memory");

    private final String label;
    private final String source;

    IndoorKind(String label, String source) {
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

    /** The class of ISO 13788 it stands for, or null. */
    @Nullable
    HumidityClass humidityClass() {
        return switch (this) {
            case CLASS_DWELLING -> HumidityClass.DWELLING;
            case CLASS_UNKNOWN -> HumidityClass.UNKNOWN;
            case CLASS_KITCHEN -> HumidityClass.KITCHEN;
            default -> null;
        };
    }
}
