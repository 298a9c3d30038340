package oakum.portal.site;

import java.time.Instant;
import java.util.UUID;

/**
 * A photo without its pixels.
 *
 * @param place where in the house
 * @param card what the location card in the picture says
 * @param takenAt when the device says it was taken; kept even when it was sent later
 */
public record PhotoShown(
        UUID id,
        String houseId,
        String place,
        String card,
        Instant takenAt,
        Instant receivedAt,
        String person,
        int widthPx,
        int heightPx) {}
