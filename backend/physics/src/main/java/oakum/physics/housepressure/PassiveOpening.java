package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.duct.DuctSurface;
import oakum.physics.duct.RoundDuct;
import org.jspecify.annotations.Nullable;

/** An opening through which air comes in without a fan. */
public record PassiveOpening(
        @Entry(label = "Short id", maxLength = 40, help = "Letters, digits, - and _; unique in the house.")
        String id,

        @Entry(label = "Name", maxLength = 80) String label,

        @Quantity(
                label = "Diameter",
                symbol = "D",
                unit = Unit.SMALL_METRE,
                min = 0.02,
                max = 1,
                limitSource = InputRange.PLAUSIBLE)
        double diameterM,

        @Quantity(
                label = "Discharge coefficient",
                symbol = "Cd",
                unit = Unit.ONE,
                min = 0.05,
                max = 1,
                limitSource = InputRange.PLAUSIBLE,
                help = "0.61 for a sharp edge; not used where a duct length is given.")
        double dischargeCoefficient,

        @Quantity(
                label = "Duct length",
                symbol = "L",
                unit = Unit.METRE,
                min = 0,
                max = 50,
                limitSource = InputRange.PLAUSIBLE,
                help = "Fill in for an opening with a duct; its losses then take the place of the coefficient.")
        @Nullable
        Double ductLengthM,

        @Nullable @Entry(label = "Duct surface", help = "Needed where there is a duct length.")
        DuctSurface ductSurface,

        @Quantity(
                label = "Loss coefficients of hood, elbows and damper",
                symbol = "ΣC",
                unit = Unit.ONE,
                min = 0,
                max = 100,
                limitSource = InputRange.PLAUSIBLE,
                help = "Sum on the velocity pressure in the duct, without the exit, which is counted as 1.")
        @Nullable
        Double fittings,

        @Quantity(
                label = "Barometric damper begins to open",
                symbol = "p0",
                unit = Unit.HOUSE_PASCAL,
                min = 0,
                max = 100,
                limitSource = InputRange.PLAUSIBLE,
                help = "Empty where there is no barometric damper. Friction and age are unknown.")
        @Nullable
        Double opensPa,

        @Quantity(
                label = "Barometric damper fully open",
                symbol = "p1",
                unit = Unit.HOUSE_PASCAL,
                min = 0,
                minExclusive = true,
                max = 200,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double fullyOpenPa,

        @Entry(
                label = "Motor damper",
                help =
                        "Opens only with a device that names this opening, and counts as shut when the make-up air fails.")
        boolean motorDamper) {

    Opening opening() {
        RoundDuct duct = ductLengthM == null || ductSurface == null
                ? null
                : new RoundDuct(
                        diameterM, ductLengthM, ductSurface.roughnessM(), 1 + (fittings == null ? 0 : fittings));
        return new Opening(
                Opening.sharp(diameterM, dischargeCoefficient).areaM2(),
                dischargeCoefficient,
                duct,
                opensPa,
                fullyOpenPa);
    }
}
