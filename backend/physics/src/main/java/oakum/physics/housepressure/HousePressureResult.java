package oakum.physics.housepressure;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** The pressure of the house in its worst combination, every other combination, and what the make-up air needs. */
public record HousePressureResult(
        @Entry(label = "Worst combination", maxLength = 1000)
        String worst,

        @Quantity(
                label = "Net exhaust",
                symbol = "Qnet",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                step = 1e-5,
                leading = true,
                help = "Exhaust less supply in the worst combination.")
        double netExhaustM3PerS,

        @Quantity(
                label = "House pressure",
                symbol = "Δp",
                unit = Unit.HOUSE_PASCAL,
                step = 0.1,
                leading = true,
                limitField = "limitPa",
                help = "Below outdoors, at rated flows: an upper bound, because real fans move less against pressure.")
        double housePressurePa,

        @Entry(label = "At rated flows") Verdict verdict,

        @Quantity(label = "House pressure, lower end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double housePressureLowPa,

        @Quantity(label = "House pressure, upper end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double housePressureHighPa,

        @Quantity(
                label = "House pressure with fan curves",
                symbol = "Δpc",
                unit = Unit.HOUSE_PASCAL,
                step = 0.1,
                leading = true,
                limitField = "limitPa",
                help = "Where each fan with a known shut-off pressure moves what the house lets it.")
        double coupledPressurePa,

        @Entry(label = "With fan curves") Verdict coupledVerdict,

        @Quantity(label = "House pressure with fan curves, lower end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double coupledPressureLowPa,

        @Quantity(label = "House pressure with fan curves, upper end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double coupledPressureHighPa,

        @Quantity(label = "Limit", symbol = "Δplim", unit = Unit.HOUSE_PASCAL)
        double limitPa,

        @Quantity(
                label = "Make-up air needed",
                symbol = "Qneed",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                step = 1e-5,
                help = "All make-up air together that holds the limit with every device at its rated flow.")
        double makeUpNeededM3PerS,

        @Quantity(label = "The same with fan curves", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double makeUpNeededWithFanCurvesM3PerS,

        @Quantity(
                label = "Make-up heaters, power needed",
                symbol = "P",
                unit = Unit.ELECTRIC_WATT,
                step = 10,
                leading = true,
                limitField = "heaterRatingW")
        @Nullable
        Double makeUpHeaterPowerW,

        @Quantity(label = "Make-up heaters, rating", unit = Unit.ELECTRIC_WATT) @Nullable
        Double heaterRatingW,

        @Quantity(
                label = "Make-up air, current",
                symbol = "I",
                unit = Unit.AMPERE,
                step = 0.1,
                leading = true,
                limitField = "currentAllowedA",
                help = "Of the unit with the greatest current; a licensed electrician sizes the circuit.")
        @Nullable
        Double currentA,

        @Quantity(label = "Current that the circuit may carry", unit = Unit.AMPERE, step = 0.1) @Nullable
        Double currentAllowedA,

        @Quantity(
                label = "Make-up duct, velocity",
                symbol = "v",
                unit = Unit.METRE_PER_SECOND,
                step = 0.01,
                leading = true,
                limitField = "ductVelocityLimitMPerS",
                help = "In the duct with the greatest velocity.")
        @Nullable
        Double ductVelocityMPerS,

        @Quantity(label = "Greatest velocity wanted", unit = Unit.METRE_PER_SECOND) @Nullable
        Double ductVelocityLimitMPerS,

        @Quantity(label = "House pressure, make-up failed", unit = Unit.HOUSE_PASCAL, step = 0.1)
        double failedPressurePa,

        @Quantity(label = "The same with fan curves", unit = Unit.HOUSE_PASCAL, step = 0.1)
        double failedCoupledPressurePa,

        @Quantity(label = "Limit after failure", unit = Unit.HOUSE_PASCAL)
        double failedLimitPa,

        @Entry(label = "Make-up failed") Verdict failedVerdict,

        @Quantity(label = "House pressure, make-up failed, lower end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double failedPressureLowPa,

        @Quantity(label = "House pressure, make-up failed, upper end", unit = Unit.HOUSE_PASCAL, step = 0.1) @Nullable
        Double failedPressureHighPa,

        @Entry(label = "The interlock must") InterlockAct interlock,

        @Quantity(
                label = "Exhaust that the house bears without make-up air",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                step = 1e-5,
                help = "At the limit after failure, through envelope and openings without motor.")
        double exhaustBorneWhenFailedM3PerS,

        @Quantity(label = "Ventilator imbalance, part of the larger flow", unit = Unit.FRACTION, step = 0.001) @Nullable
        Double ventilatorImbalanceFraction,

        @Quantity(label = "Force to open the door", symbol = "F", unit = Unit.NEWTON, step = 0.1) @Nullable
        Double doorForceN,

        @Quantity(label = "The same, make-up failed", unit = Unit.NEWTON, step = 0.1) @Nullable
        Double doorForceWhenFailedN,

        @Nullable @Entry(label = "Door, make-up failed") Verdict doorVerdict,

        @Quantity(label = "Air pressure", symbol = "p", unit = Unit.AIR_PASCAL, step = 10)
        double airPressurePa,

        @Quantity(
                label = "Density at which sums of flows count",
                symbol = "ρ",
                unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                step = 1e-4)
        double countDensityKgPerM3,

        @Quantity(label = "Density indoors", unit = Unit.KILOGRAM_PER_CUBIC_METRE, step = 1e-4)
        double indoorDensityKgPerM3,

        @Quantity(label = "Density outdoors", unit = Unit.KILOGRAM_PER_CUBIC_METRE, step = 1e-4)
        double outdoorDensityKgPerM3,

        @Quantity(
                label = "Mass left over in the balance, at most",
                unit = Unit.KILOGRAM_PER_SECOND,
                step = 1e-9,
                help = "How well the solution closes.")
        double balanceErrorKgPerS,

        @Entry(label = "Every combination, worst first") List<Combination> combinations,
        @Entry(label = "What each device moves") List<DeviceFlow> devices,
        @Entry(label = "Make-up units") List<MakeUpUnitResult> makeUpUnits,
        List<Notice> notices)
        implements HasNotices {}
