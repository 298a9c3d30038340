package oakum.portal.reading;

import java.io.IOException;
import java.time.Instant;

/** Where a reader of a body puts what it finds, in the order of the lines. */
interface Rows {
    void reading(long line, int sensorId, Instant at, double value) throws IOException;

    /**
     * One thing that is not taken.
     *
     * @param field the column or member
     * @param value as sent
     * @param text the whole line, shortened
     */
    void refuse(long line, String field, String value, String reason, String text);

    /** A field that says "no value". */
    void empty();
}
