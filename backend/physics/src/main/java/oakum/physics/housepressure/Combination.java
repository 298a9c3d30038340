package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;

/** One combination of what runs, with its make-up air working and failed. */
public record Combination(
        @Entry(label = "Id", maxLength = 400) String id,
        @Entry(label = "What runs", maxLength = 1000) String running,

        @Quantity(label = "Exhaust, rated", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double exhaustM3PerS,

        @Quantity(label = "Make-up air", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double makeUpM3PerS,

        @Quantity(label = "Net exhaust", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double netExhaustM3PerS,

        @Quantity(
                label = "House pressure at rated flows",
                unit = Unit.HOUSE_PASCAL,
                step = 0.1,
                help = "Below outdoors; negative where the house is above. An upper bound: real fans move less.")
        double housePressurePa,

        @Entry(label = "At rated flows") Verdict verdict,

        @Quantity(label = "House pressure with fan curves", unit = Unit.HOUSE_PASCAL, step = 0.1)
        double coupledPressurePa,

        @Quantity(label = "Exhaust really moved", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double movedM3PerS,

        @Entry(label = "With fan curves") Verdict coupledVerdict,

        @Quantity(label = "House pressure, make-up failed", unit = Unit.HOUSE_PASCAL, step = 0.1)
        double failedPressurePa,

        @Quantity(label = "The same with fan curves", unit = Unit.HOUSE_PASCAL, step = 0.1)
        double failedCoupledPressurePa,

        @Entry(label = "Make-up failed") Verdict failedVerdict,
        @Entry(label = "The interlock must") InterlockAct interlock,

        @Quantity(
                label = "House pressure after it has acted",
                unit = Unit.HOUSE_PASCAL,
                step = 0.1,
                help = "With every device off that failed make-up air follows.")
        double stoppedPressurePa) {}
