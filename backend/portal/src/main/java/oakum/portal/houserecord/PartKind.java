package oakum.portal.houserecord;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Fields;

/** The parts of every house record. */
public enum PartKind {
    /** Changed through the house itself, so that its name and place have one address. */
    HOUSE("House", HouseMeasures.class),
    ENCLOSURE("Enclosure", EnclosurePart.class),
    AIR("Air", AirPart.class),
    HEAT("Heat", HeatPart.class),
    MOISTURE("Moisture", MoisturePart.class),
    WATER("Water", WaterPart.class),
    SENSORS("Sensors", SensorsPart.class);

    private final String title;
    private final Class<? extends Record> type;

    PartKind(String title, Class<? extends Record> type) {
        this.title = title;
        this.type = type;
    }

    /** The first name of every path into the part: {@code air}. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String title() {
        return title;
    }

    public Class<? extends Record> type() {
        return type;
    }

    public List<Field> fields() {
        return Fields.of(type);
    }

    public static Optional<PartKind> find(String key) {
        return Arrays.stream(values()).filter(kind -> kind.key().equals(key)).findFirst();
    }

    /** The part that a path points into; empty for results and for what does not exist. */
    static Optional<PartKind> ofPath(String path) {
        int dot = path.indexOf('.');
        return dot < 0 ? Optional.empty() : find(path.substring(0, dot));
    }
}
