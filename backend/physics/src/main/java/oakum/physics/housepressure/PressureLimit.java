package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** How far below outdoors the house may be, and who says so. */
public record PressureLimit(
        @Quantity(
                label = "Limit with make-up air working",
                symbol = "Δplim",
                unit = Unit.HOUSE_PASCAL,
                min = 0.1,
                max = 100,
                limitSource = "the power law of envelope leakage is valid up to 100 Pa (ASTM E779, from memory)")
        double workingPa,

        @Quantity(
                label = "Limit after the make-up air has failed",
                symbol = "Δpfail",
                unit = Unit.HOUSE_PASCAL,
                min = 0.1,
                max = 100,
                limitSource = "the power law of envelope leakage is valid up to 100 Pa (ASTM E779, from memory)",
                help = "Empty where the same limit holds.")
        @Nullable
        Double failedPa,

        @Quantity(
                label = "Back below it within",
                symbol = "tfail",
                unit = Unit.SECOND,
                min = 1,
                max = 3600,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double failedWithinS,

        @Entry(label = "Set by") LimitOrigin origin,

        @Entry(label = "Rule", help = "Name of the rule or its clause.")
        String rule,

        @Entry(label = "Edition", maxLength = 60) String edition,

        @Nullable @Entry(label = "Place", maxLength = 80, help = "Where the rule is adopted.")
        String place,

        @Nullable
        @Entry(label = "Confirmed by", maxLength = 80, help = "Who confirmed it for this house; a role or an office.")
        String confirmedBy) {

    double afterFailurePa() {
        return failedPa == null ? workingPa : failedPa;
    }
}
