package oakum.physics.trend;

import java.time.LocalDate;
import oakum.physics.calculation.Labelled;
import org.jspecify.annotations.Nullable;

/**
 * When a filter may be changed and when it must be, from its load and how fast that grows. Dates are the nearest whole
 * day, half a day rounding to the earlier one.
 *
 * @param opens the day from which a visit makes sense, at the latest {@code latestVisit}; the day of the load where that
 *     is already so; null where neither
 *     load nor calendar will ever ask for one
 * @param open whether the window is open on the day of the load
 * @param due the day it must be changed, or null where nothing asks for it
 * @param latestVisit the last day for a planned visit: {@code due} less the reserve, though not before the day of
 *     the load
 * @param why what makes it due, or null
 */
public record FilterWindow(
        @Nullable LocalDate opens,
        boolean open,
        @Nullable LocalDate due,
        @Nullable LocalDate latestVisit,
        FilterWindow.@Nullable Why why) {

    /** What makes a filter due. */
    public enum Why implements Labelled {
        LOAD("filter load"),
        STATIC_BUDGET("static budget used up"),
        LONGEST_TIME("longest time in place");

        private final String label;

        Why(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** Keeps half days at the earlier day in spite of binary fractions. */
    private static final double HAIR_D = 1e-6;

    /** Beyond this the forecast says "never" rather than a date. */
    private static final double FARTHEST_D = 36_525;

    /** The window of a filter of which only load and slope are known. */
    public static FilterWindow of(double load, double slopePerDay, LocalDate loadOn, FilterRules rules) {
        return of(load, slopePerDay, loadOn, rules, null, null);
    }

    /**
     * The window of a filter.
     *
     * @param load filter load, 1 for new, above 0
     * @param slopePerDay its growth; at 0 or below it will never be due by load
     * @param loadOn the day for which the load holds
     * @param usedUpLoad load at which the fan's static budget is used up, or null where unknown
     * @param fittedOn the day the filter was put in, or null where unknown
     */
    public static FilterWindow of(
            double load,
            double slopePerDay,
            LocalDate loadOn,
            FilterRules rules,
            @Nullable Double usedUpLoad,
            @Nullable LocalDate fittedOn) {
        boolean staticFirst = usedUpLoad != null && usedUpLoad < rules.changeLoad();
        double ruling = staticFirst && usedUpLoad != null ? usedUpLoad : rules.changeLoad();
        LocalDate due = reaches(ruling, load, slopePerDay, loadOn);
        Why why = due == null ? null : staticFirst ? Why.STATIC_BUDGET : Why.LOAD;
        LocalDate longest = fittedOn == null ? null : fittedOn.plusMonths(rules.longestMonthCount());
        if (longest != null && (due == null || longest.isBefore(due))) {
            due = longest;
            why = Why.LONGEST_TIME;
        }
        LocalDate latest = due == null ? null : latestVisit(due, rules, loadOn);
        LocalDate opens = earlier(opens(rules, ruling, load, slopePerDay, loadOn), latest);
        boolean open = opens != null && !opens.isAfter(loadOn);
        if (open) {
            opens = loadOn;
        }
        return new FilterWindow(opens, open, due, latest, why);
    }

    private static LocalDate latestVisit(LocalDate due, FilterRules rules, LocalDate loadOn) {
        LocalDate planned = due.minusDays((long) Math.ceil(rules.reserveD()));
        LocalDate soonest = due.isBefore(loadOn) ? due : loadOn;
        return planned.isBefore(soonest) ? soonest : planned;
    }

    private static @Nullable LocalDate opens(
            FilterRules rules, double ruling, double load, double slopePerDay, LocalDate loadOn) {
        double worthIt = Math.max(rules.windowLoad(), rules.noVisitBelowLoad());
        return reaches(Math.min(worthIt, ruling), load, slopePerDay, loadOn);
    }

    private static @Nullable LocalDate earlier(@Nullable LocalDate one, @Nullable LocalDate other) {
        if (one == null || other == null) {
            return one == null ? other : one;
        }
        return one.isBefore(other) ? one : other;
    }

    /** The day a load is reached, the day of the load itself where it already is, null for never. */
    static @Nullable LocalDate reaches(double target, double load, double slopePerDay, LocalDate loadOn) {
        if (load >= target) {
            return loadOn;
        }
        double days = slopePerDay > 0 ? (target - load) / slopePerDay : Double.POSITIVE_INFINITY;
        return days > FARTHEST_D ? null : loadOn.plusDays(nearestDay(days));
    }

    static long nearestDay(double days) {
        return (long) Math.ceil(days - 0.5 - HAIR_D);
    }
}
