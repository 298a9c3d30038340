package oakum.portal.aftercare;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where one filter stands.
 *
 * @param load filter load: 1.0 new, 2.0 change it
 * @param latestOn last day for a planned visit
 * @param dueEarliestOn earliest end of the 80 % interval of the due day
 * @param bend where it began to fill early, or null
 * @param windowLoad filter load at which the window opens
 * @param changeLoad filter load at which it is changed
 * @param reason why it stands so, in sentences
 */
public record FilterFollowUp(
        String house,
        String houseName,
        String place,
        String filter,
        String inHouse,
        String size,
        int count,
        String grade,
        @Nullable String shelfPlace,
        LocalDate fittedOn,
        double cleanHighPa,
        double cleanLowPa,
        double designHighPa,
        double designLowPa,
        double load,
        LocalDate loadOn,
        @Nullable Double slopePerWeek,
        String standing,
        @Nullable LocalDate windowOpensOn,
        LocalDate dueOn,
        String dueBecause,
        LocalDate latestOn,
        LocalDate dueEarliestOn,
        LocalDate dueLatestOn,
        boolean fillingEarly,
        @Nullable LocalDate fillingEarlySince,
        @Nullable Bend bend,
        double windowLoad,
        double changeLoad,
        String reason,
        List<LoadPoint> loads,
        long version,
        List<String> actions) {

    /**
     * A change of slope.
     *
     * @param afterOn last day before it
     * @param byOn first day after it
     * @param asBeforeDueOn the day it would have been due without the change
     * @param explainedBy what the record knows about those days
     */
    public record Bend(
            LocalDate afterOn,
            LocalDate byOn,
            double slopeBeforePerWeek,
            double slopeSincePerWeek,
            LocalDate asBeforeDueOn,
            List<Filters.HouseEvent> explainedBy) {}

    /** The load of a day. */
    public record LoadPoint(LocalDate on, double load) {}
}
