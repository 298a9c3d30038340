package oakum.portal.houserecord;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One part in one revision.
 *
 * @param revision 0 where nobody has saved it yet; the entity tag
 * @param document the part itself
 */
record PartView(
        String part,
        String title,
        int revision,

        @Schema(
                oneOf = {
                    HouseMeasures.class,
                    EnclosurePart.class,
                    AirPart.class,
                    HeatPart.class,
                    MoisturePart.class,
                    WaterPart.class,
                    SensorsPart.class
                })
        Record document,

        @Nullable String madeBy,
        @Nullable Instant madeAt,
        @Nullable String reason,
        List<String> actions) {

    static PartView of(PartKind kind, @Nullable Revision revision, Record empty, List<String> actions) {
        return revision == null
                ? new PartView(kind.key(), kind.title(), 0, empty, null, null, null, actions)
                : new PartView(
                        kind.key(),
                        kind.title(),
                        revision.revision(),
                        revision.document(),
                        revision.madeBy(),
                        revision.madeAt(),
                        revision.reason(),
                        actions);
    }
}
