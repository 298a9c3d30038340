package oakum.portal.http;

import java.io.IOException;

/** Thrown while a body is read, as soon as it has grown past its limit. */
final class BodyTooLarge extends IOException {
    private static final long serialVersionUID = 1L;

    private final long limitBytes;

    BodyTooLarge(long limitBytes) {
        super("body over " + limitBytes + " bytes");
        this.limitBytes = limitBytes;
    }

    long limitBytes() {
        return limitBytes;
    }
}
