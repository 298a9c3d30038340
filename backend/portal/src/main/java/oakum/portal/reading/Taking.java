package oakum.portal.reading;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/** The last check before a value is taken, the same for every format. */
final class Taking {
    /** Nothing that this portal is for was measured earlier; typical years reach back to the seventies. */
    private static final Instant EARLIEST = Instant.parse("1970-01-01T00:00:00Z");

    private final Rows rows;
    private final Instant latest;

    Taking(Rows rows, Clock clock) {
        this.rows = rows;
        this.latest = clock.instant().plus(Duration.ofDays(1));
    }

    void check(Instant at) throws Unreadable {
        if (at.isBefore(EARLIEST) || at.isAfter(latest)) {
            throw new Unreadable("the time is outside " + EARLIEST + " to one day from now");
        }
    }

    /**
     * Passes a value on where its sensor can mean it.
     *
     * @param raw as in the file
     */
    void take(long line, TableForm.Target target, Instant at, double raw) throws Unreadable, IOException {
        ObservedProperty property = target.sensor().property();
        double value = raw * target.factor() + target.offset();
        if (!(value >= property.min() && value <= property.max())) {
            throw new Unreadable("outside " + property.min() + " to " + property.max() + " "
                    + property.unit().ucum() + ", the range of " + property.label()
                    + (value == raw ? "" : " (kept as " + value + ")"));
        }
        rows.reading(line, target.sensor().id(), at, value);
    }
}
