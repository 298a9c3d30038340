package oakum.physics.housepressure;

import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** The force that opens a swing door against a pressure. */
public final class DoorForce {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "door-force", "1.0", "Force to open a door", Input.class, Result.class)
            .purpose("Gives the force at the handle that opens a door against a pressure, and the pressure at which it"
                    + " reaches what is allowed.")
            .equation("F = Fdc + W A Δp/(2 (W − d)), A = W H", Citations.DOOR)
            .source(Citations.DOOR)
            .caution(Caution.CODE_AUTHORITY)
            .validation("No published example was found; computed a second time by independent code.")
            .by(DoorForce::compute);

    private DoorForce() {}

    /** A door and the pressure on it. */
    public record Input(
            @Entry(label = "Door") Door door,

            @Quantity(
                    label = "Pressure across the door",
                    symbol = "Δp",
                    unit = Unit.HOUSE_PASCAL,
                    min = 0,
                    max = 1000,
                    limitSource = InputRange.PLAUSIBLE)
            double pressurePa) {}

    /** What it takes. */
    public record Result(
            @Quantity(label = "Force at the handle", symbol = "F", unit = Unit.NEWTON, step = 0.1, leading = true)
            double forceN,

            @Nullable @Entry(label = "Against the force allowed")
            Verdict verdict,

            @Quantity(
                    label = "Pressure at which the force allowed is reached",
                    unit = Unit.HOUSE_PASCAL,
                    step = 0.1,
                    help = "0 where the closer alone needs more.")
            @Nullable
            Double pressureAtLimitPa) {}

    private static Result compute(Input input) {
        Door door = input.door();
        Double limit = door.forceLimitN();
        double force = door.forceN(input.pressurePa());
        return new Result(
                force,
                limit == null ? null : Verdict.atMost(force, 0, limit),
                limit == null ? null : (Double) door.pressureForForcePa(limit));
    }
}
