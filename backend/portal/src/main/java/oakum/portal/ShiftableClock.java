package oakum.portal;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.springframework.stereotype.Component;

/**
 * The one clock that everything asks: the machine's, in UTC, until it is shifted. The demo shifts it to the day on which
 * its invented firm lives; from there it runs on.
 */
@Component
public class ShiftableClock extends Clock {
    private final Clock machine = Clock.systemUTC();
    private volatile Duration shift = Duration.ZERO;

    /** Makes it this moment now. */
    public void shiftTo(Instant now) {
        shift = Duration.between(machine.instant(), now);
    }

    /** Back to the machine's time. */
    public void unshift() {
        shift = Duration.ZERO;
    }

    @Override
    public Instant instant() {
        return machine.instant().plus(shift);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        ShiftableClock shared = this;
        return new Clock() {
            @Override
            public Instant instant() {
                return shared.instant();
            }

            @Override
            public ZoneId getZone() {
                return zone;
            }

            @Override
            public Clock withZone(ZoneId other) {
                return shared.withZone(other);
            }
        };
    }
}
