package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** What one device really moves. */
public record DeviceFlow(
        @Entry(label = "Id") String id,
        @Entry(label = "Name") String label,

        @Quantity(label = "Rated", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double ratedM3PerS,

        @Quantity(
                label = "In the worst combination with it",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                step = 1e-5,
                help = "With fan curves and make-up air working.")
        double movedM3PerS,

        @Quantity(label = "The same, make-up failed", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5)
        double movedWhenFailedM3PerS) {}
