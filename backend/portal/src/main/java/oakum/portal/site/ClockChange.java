package oakum.portal.site;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How a clock goes on.
 *
 * @param plannedOn the day on which it is to be covered, null for none
 * @param stoppedOn the day on which it was covered, null while it runs
 */
public record ClockChange(
        @Nullable LocalDate plannedOn, @Nullable LocalDate stoppedOn) {}
