package oakum.physics.housepressure;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** A swing door that the house pressure holds shut. */
public record Door(
        @Quantity(
                label = "Door width",
                symbol = "W",
                unit = Unit.METRE,
                min = 0.3,
                max = 3,
                limitSource = InputRange.PLAUSIBLE)
        double widthM,

        @Quantity(
                label = "Door height",
                symbol = "H",
                unit = Unit.METRE,
                min = 0.5,
                max = 4,
                limitSource = InputRange.PLAUSIBLE)
        double heightM,

        @Quantity(
                label = "Handle to latch edge",
                symbol = "d",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 0.25,
                limitSource = InputRange.PLAUSIBLE)
        double handleToEdgeM,

        @Quantity(
                label = "Force of the closer",
                symbol = "Fdc",
                unit = Unit.NEWTON,
                min = 0,
                max = 200,
                limitSource = InputRange.PLAUSIBLE,
                help = "0 without a closer.")
        double closerForceN,

        @Quantity(
                label = "Greatest force allowed",
                symbol = "Flim",
                unit = Unit.NEWTON,
                min = 1,
                max = 500,
                limitSource = InputRange.PLAUSIBLE,
                help = "From the code adopted there, or a firm rule; empty where none is set.")
        @Nullable
        Double forceLimitN) {

    /** Force at the handle, F = Fdc + W A Δp/(2 (W − d)) (IBC 909.6.2); N. */
    double forceN(double pressurePa) {
        return closerForceN + pressurePa / pressurePerForcePaPerN();
    }

    /** The pressure at which the door needs a given force; Pa, 0 where the closer alone needs it. */
    double pressureForForcePa(double forceN) {
        return Math.max(0, forceN - closerForceN) * pressurePerForcePaPerN();
    }

    private double pressurePerForcePaPerN() {
        return 2 * (widthM - handleToEdgeM) / (widthM * widthM * heightM);
    }
}
