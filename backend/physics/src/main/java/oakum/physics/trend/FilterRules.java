package oakum.physics.trend;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;

/** When a filter is worth a visit: the firm's own rules, editable. */
public record FilterRules(
        @Quantity(
                label = "Window opens at filter load",
                unit = Unit.ONE,
                min = 1,
                max = 10,
                limitSource = RANGE,
                help = "From here on a visit is worth combining with others.")
        double windowLoad,

        @Quantity(
                label = "Change at filter load",
                unit = Unit.ONE,
                min = 1,
                minExclusive = true,
                max = 10,
                limitSource = RANGE,
                help = "2.0 is the firm's rule; the laboratory's final drop of twice the initial is common practice.")
        double changeLoad,

        @Quantity(
                label = "No visit below filter load",
                unit = Unit.ONE,
                min = 1,
                max = 10,
                limitSource = RANGE,
                help = "Unless the owner asks, or the longest time is up.")
        double noVisitBelowLoad,

        @Quantity(
                label = "Longest time in place, months",
                unit = Unit.COUNT,
                min = 1,
                max = 60,
                limitSource = "a filter stays from one month to five years",
                help = "Even a filter that does not fill: odour and ageing of the media.")
        int longestMonthCount,

        @Quantity(
                label = "Latest visit before it is due",
                unit = Unit.DAY,
                min = 0,
                max = 90,
                limitSource = "up to a season ahead",
                help = "Days of reserve between the latest visit and the day the filter is due.")
        double reserveD,

        @Quantity(
                label = "Clean mark may differ from the design curve by",
                unit = Unit.FRACTION,
                min = 0.01,
                max = 1,
                limitSource = "narrower than the readings' own scatter tells nothing",
                help = "Beyond it the filter looks wrong: size, grade, gap or direction.")
        double cleanMarkToleranceFraction,

        @Quantity(
                label = "Filling early at so many times the life slope",
                unit = Unit.ONE,
                min = 1,
                minExclusive = true,
                max = 20,
                limitSource = RANGE,
                help = "The slope of the last 28 days against the slope since the filter was put in.")
        double earlyRatio,

        @Quantity(
                label = "Filling early when it lasts",
                unit = Unit.DAY,
                min = 1,
                max = 90,
                limitSource = "from a day to a season")
        double earlyAfterD) {

    static final Source FIRM = Source.proposed("firm rules");

    static final String RANGE = "a load of 1 is a new filter";

    /** The rules with which the firm begins. */
    public static final FilterRules USUAL = new FilterRules(1.5, 2.0, 1.3, 12, 7, 0.15, 2, 14);
}
