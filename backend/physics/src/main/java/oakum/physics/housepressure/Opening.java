package oakum.physics.housepressure;

import oakum.physics.duct.RoundDuct;
import org.jspecify.annotations.Nullable;

/**
 * A passive opening: a sharp edge, Q = Cd A √(2 Δp/ρ), or a duct with losses, Q = A √(2 Δp/(ρ (1 + f L/D + ΣC))), either
 * behind an optional barometric damper that opens in proportion between two pressures and shuts against outward flow.
 *
 * @param areaM2 free area, not negative
 * @param dischargeCoefficient Cd of a sharp opening; not used where there is a duct
 * @param duct the duct, with the 1 of the exit in its loss coefficient, or null
 * @param opensPa depressurisation at which a barometric damper begins to open, or null where there is none
 * @param fullyOpenPa depressurisation at which it is fully open, above opensPa
 */
record Opening(
        double areaM2,
        double dischargeCoefficient,
        @Nullable RoundDuct duct,
        @Nullable Double opensPa,
        @Nullable Double fullyOpenPa) {

    static Opening sharp(double diameterM, double dischargeCoefficient) {
        return new Opening(Math.PI / 4 * diameterM * diameterM, dischargeCoefficient, null, null, null);
    }

    /** Flow inwards in m³/s at a depressurisation; outwards where that is negative. */
    double airflowM3PerS(double depressurisationPa, double densityKgPerM3, double viscosityPaS) {
        double drop = Math.abs(depressurisationPa);
        double free = duct == null
                ? dischargeCoefficient * areaM2 * Math.sqrt(2 * drop / densityKgPerM3)
                : duct.airflowM3PerS(drop, densityKgPerM3, viscosityPaS);
        return Math.copySign(free * openFraction(depressurisationPa), depressurisationPa);
    }

    private double openFraction(double depressurisationPa) {
        if (opensPa == null || fullyOpenPa == null) {
            return 1;
        }
        return Math.min(1, Math.max(0, (depressurisationPa - opensPa) / (fullyOpenPa - opensPa)));
    }

    /** The area of a sharp opening that passes a flow at a pressure difference. */
    static double sharpAreaM2(
            double airflowM3PerS, double pressurePa, double dischargeCoefficient, double densityKgPerM3) {
        return airflowM3PerS / (dischargeCoefficient * Math.sqrt(2 * pressurePa / densityKgPerM3));
    }
}
