package oakum.portal.houserecord;

import java.time.Instant;

/** Who gave a path its present value, when and why. */
public record ValueOrigin(String part, int revision, String madeBy, Instant madeAt, String reason) {}
