package oakum.physics.housepressure;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** The two flows of a balanced ventilator, both measured at the same temperature. */
public record Ventilator(
        @Quantity(
                label = "Ventilator supply",
                symbol = "Qsup",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0,
                max = 1,
                limitSource = InputRange.PLAUSIBLE)
        double supplyM3PerS,

        @Quantity(
                label = "Ventilator exhaust",
                symbol = "Qexh",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0,
                max = 1,
                limitSource = InputRange.PLAUSIBLE,
                help = "More exhaust than supply counts in every combination; more supply is left out, because it can"
                        + " stop.")
        double exhaustM3PerS) {

    double netExhaustM3PerS() {
        return exhaustM3PerS - supplyM3PerS;
    }

    /** The imbalance as a part of the larger flow, 0 to 1. */
    double imbalanceFraction() {
        double larger = Math.max(supplyM3PerS, exhaustM3PerS);
        return larger == 0 ? 0 : Math.abs(netExhaustM3PerS()) / larger;
    }
}
