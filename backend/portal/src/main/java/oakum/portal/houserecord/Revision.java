package oakum.portal.houserecord;

import java.time.Instant;
import java.util.UUID;

/**
 * One saved state of a part.
 *
 * @param part its key
 * @param revision counted from 1
 * @param document the part as it was saved
 */
record Revision(
        String part, int revision, Record document, UUID madeById, String madeBy, Instant madeAt, String reason) {}
