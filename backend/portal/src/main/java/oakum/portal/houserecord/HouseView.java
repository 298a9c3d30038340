package oakum.portal.houserecord;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A house as everybody who may see it sees it.
 *
 * @param id its short code: H1
 * @param stageLabel the stage in words: "second year and on"
 * @param weatherHash content hash of its weather year, or null
 * @param version counts its changes; the entity tag
 * @param actions what the caller may do now
 */
public record HouseView(
        String id,
        String name,
        String place,
        double latitudeDeg,
        double longitudeDeg,
        double altitudeM,
        String timeZone,
        Stage stage,
        String stageLabel,
        double floorAreaM2,
        double netVolumeM3,
        double volumeWithFloorsM3,
        double envelopeAreaM2,
        int bedroomCount,
        double designOutdoorC,
        @Nullable String weatherHash,
        long version,
        List<String> actions) {

    static HouseView of(House house, HouseMeasures m, List<String> actions) {
        return new HouseView(
                house.id(),
                m.name(),
                m.place(),
                m.latitudeDeg(),
                m.longitudeDeg(),
                m.altitudeM(),
                m.timeZone(),
                m.stage(),
                m.stage().label(),
                m.floorAreaM2(),
                m.netVolumeM3(),
                m.volumeWithFloorsM3(),
                m.envelopeAreaM2(),
                m.bedroomCount(),
                m.designOutdoorC(),
                m.weatherHash(),
                house.version(),
                actions);
    }
}
