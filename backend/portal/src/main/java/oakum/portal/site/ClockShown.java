package oakum.portal.site;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A running clock, counted on the house's own calendar.
 *
 * @param label what stands exposed: "Outer membrane, south face"
 * @param limitDays how many days it may stand
 * @param plannedOn the day on which it is to be covered, or null
 * @param stoppedOn the day on which it was covered, or null
 * @param daysUsed days from the start to today, or to the day of covering
 * @param plannedDay the planned day counted from the start, or null
 * @param daysToSpare days between the covering and the limit; negative when it comes too late; counted from today where no
 *     day is planned
 * @param daysOver how many days too late, 0 when in time
 * @param wantedDays days to spare that the firm asks for
 * @param lastDay the last day on which it may be covered
 * @param tellOn the day on which people are told that it runs out
 * @param told whether that day has come
 * @param sentence the finding in words
 * @param actions what this person may do now
 */
public record ClockShown(
        String id,
        String label,
        LocalDate startedOn,
        int limitDays,
        String limitSource,
        @Nullable LocalDate plannedOn,
        @Nullable LocalDate stoppedOn,
        LocalDate today,
        int daysUsed,
        @Nullable Integer plannedDay,
        int daysToSpare,
        int daysOver,
        int wantedDays,
        LocalDate lastDay,
        LocalDate tellOn,
        boolean told,
        String state,
        String stateLabel,
        String sentence,
        long version,
        List<String> actions) {}
