package oakum.portal.site;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * Something that may stand exposed for a number of days: a membrane in the sun, a roof under a tarp. Counts whole days of
 * the house's own calendar; the day it starts is day 0.
 *
 * @param startedOn the day it was unrolled
 * @param limitDays how many days it may stand, 1 or more
 * @param plannedOn the day on which it is to be covered, or null where nobody has said
 * @param stoppedOn the day on which it was covered, or null while it runs
 */
record Exposure(
        LocalDate startedOn,
        int limitDays,
        @Nullable LocalDate plannedOn,
        @Nullable LocalDate stoppedOn) {
    /** Days to spare that the firm asks for on the day of covering: a firm rule, no published source. */
    static final int WANTED_DAYS = 14;

    /** Share of the limit at which people are told: a firm rule, no published source. */
    private static final double TOLD_AT = 0.75;

    /** Where a clock is, from best to worst. */
    enum State {
        COVERED("covered"),
        WITHIN("within its limit"),
        SHORT("less to spare than the firm asks for"),
        OVER("over its limit");

        private final String label;

        State(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    int daysUsed(LocalDate today) {
        return days(stoppedOn != null && stoppedOn.isBefore(today) ? stoppedOn : today);
    }

    /** The last day on which it may be covered. */
    LocalDate lastDay() {
        return startedOn.plusDays(limitDays);
    }

    /** The first day on which people are told that it runs out. */
    LocalDate tellOn() {
        return startedOn.plusDays((long) Math.ceil(limitDays * TOLD_AT));
    }

    /** The day of covering as its number, or null where none is planned. */
    @Nullable
    Integer plannedDay() {
        return plannedOn == null ? null : days(plannedOn);
    }

    /** Days between the covering and the limit; negative where it comes too late; today's where none is planned. */
    int daysToSpare(LocalDate today) {
        if (stoppedOn != null) {
            return limitDays - days(stoppedOn);
        }
        return limitDays - (plannedOn == null ? days(today) : Math.max(days(plannedOn), days(today)));
    }

    State state(LocalDate today) {
        int spare = daysToSpare(today);
        if (spare < 0) {
            return State.OVER;
        }
        if (stoppedOn != null) {
            return State.COVERED;
        }
        return plannedOn != null && spare < WANTED_DAYS ? State.SHORT : State.WITHIN;
    }

    /** The finding in words. */
    String sentence(LocalDate today) {
        int spare = daysToSpare(today);
        String rest = spare < 0 ? "over by " + counted(-spare) : counted(spare) + " to spare";
        if (stoppedOn != null) {
            return "Covered on day " + days(stoppedOn) + " of " + limitDays + ": " + rest + ".";
        }
        String used = daysUsed(today) + " of " + counted(limitDays) + " used";
        return plannedOn == null
                ? used + ", no day of covering planned: " + rest + "."
                : used + "; covered as planned on day " + days(plannedOn) + ": " + rest + ".";
    }

    private static String counted(int days) {
        return days == 1 ? "1 day" : days + " days";
    }

    Exposure plannedFor(@Nullable LocalDate day) {
        return new Exposure(startedOn, limitDays, day, stoppedOn);
    }

    private int days(LocalDate day) {
        return (int) ChronoUnit.DAYS.between(startedOn, day);
    }
}
