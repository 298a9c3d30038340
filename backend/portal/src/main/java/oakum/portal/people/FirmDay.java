package oakum.portal.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** What day it is at the firm. */
@Component
class FirmDay {
    private final Clock clock;
    private final ZoneId zone;

    FirmDay(Clock clock, @Value("${oakum.time-zone}") ZoneId zone) {
        this.clock = clock;
        this.zone = zone;
    }

    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), zone);
    }
}
