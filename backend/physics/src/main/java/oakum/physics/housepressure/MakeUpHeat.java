package oakum.physics.housepressure;

import oakum.physics.moistair.MoistAir;

/** Heating and mixing of make-up air. */
final class MakeUpHeat {
    private MakeUpHeat() {}

    /** Power to warm a mass flow, P = ṁ cp (Tsup − Tout); W. */
    static double powerW(double massFlowKgPerS, double fromC, double toC) {
        return massFlowKgPerS * Air.SPECIFIC_HEAT_J_PER_KG_K * (toC - fromC);
    }

    /** Temperature of two mass flows mixed, dry and of equal specific heat. */
    static double mixedC(double firstKgPerS, double firstC, double secondKgPerS, double secondC) {
        return (firstKgPerS * firstC + secondKgPerS * secondC) / (firstKgPerS + secondKgPerS);
    }

    /** The same from two volume flows at one pressure, each at its own temperature: their mass goes with Q/T. */
    static double mixedFromVolumesC(double firstM3PerS, double firstC, double secondM3PerS, double secondC) {
        return mixedC(
                firstM3PerS / (firstC + MoistAir.ZERO_C_IN_K),
                firstC,
                secondM3PerS / (secondC + MoistAir.ZERO_C_IN_K),
                secondC);
    }

    /** Mean velocity in the free area of an outlet; m/s. */
    static double outletVelocityMPerS(double airflowM3PerS, double grossAreaM2, double freeFraction) {
        return airflowM3PerS / (grossAreaM2 * freeFraction);
    }
}
