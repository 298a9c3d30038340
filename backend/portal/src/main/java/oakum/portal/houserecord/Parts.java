package oakum.portal.houserecord;

import java.util.Map;

/**
 * The parts of one house as they are now; a part that nobody has saved yet is empty.
 *
 * @param revisions the present revision of each part, 0 where nobody has saved one
 */
public record Parts(
        HouseMeasures house,
        EnclosurePart enclosure,
        AirPart air,
        HeatPart heat,
        MoisturePart moisture,
        WaterPart water,
        SensorsPart sensors,
        Map<PartKind, Integer> revisions) {

    /** The record of one part. */
    public Record of(PartKind kind) {
        return switch (kind) {
            case HOUSE -> house;
            case ENCLOSURE -> enclosure;
            case AIR -> air;
            case HEAT -> heat;
            case MOISTURE -> moisture;
            case WATER -> water;
            case SENSORS -> sensors;
        };
    }

    /** The present revision of one part. */
    public int revision(PartKind kind) {
        return revisions.getOrDefault(kind, 0);
    }
}
