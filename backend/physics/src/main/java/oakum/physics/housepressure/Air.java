package oakum.physics.housepressure;

import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import org.jspecify.annotations.Nullable;

/**
 * The air inside and outside one house, and what an entered volume flow weighs under the chosen {@link FlowBasis}. Dry
 * air: humidity changes these densities by less than 1 %.
 */
final class Air {
    /** Standard air: 20 °C at 101 325 Pa. */
    static final double STANDARD_KG_PER_M3 = 1.2041;

    static final double SPECIFIC_HEAT_J_PER_KG_K = 1006;

    private static final double STANDARD_C = 20;

    private final FlowBasis basis;
    private final double pressurePa;
    private final double indoorC;
    private final double outdoorC;
    private final double countC;
    private final double countKgPerM3;

    Air(FlowBasis basis, double altitudeM, double indoorC, double outdoorC, @Nullable Double referenceC) {
        this.basis = basis;
        this.pressurePa = StandardAtmosphere.pressurePa(altitudeM);
        this.indoorC = indoorC;
        this.outdoorC = outdoorC;
        this.countC = switch (basis) {
            case STANDARD -> STANDARD_C;
            case LOCAL -> {
                if (referenceC == null) {
                    throw new IllegalArgumentException("the basis LOCAL needs a temperature");
                }
                yield referenceC;
            }
            case OWN_STATE -> indoorC;
        };
        this.countKgPerM3 = basis == FlowBasis.STANDARD ? STANDARD_KG_PER_M3 : densityKgPerM3(countC);
    }

    double pressurePa() {
        return pressurePa;
    }

    /** Density of air of any temperature at this altitude. */
    double densityKgPerM3(double temperatureC) {
        return MoistAir.dryAirDensityKgPerM3(temperatureC, pressurePa);
    }

    /** The density at which sums of flows are reported: that of the basis; under OWN_STATE that of the indoor air. */
    double countKgPerM3() {
        return countKgPerM3;
    }

    /** What a cubic metre of a flow of this temperature weighs, as it was entered. */
    double enteredKgPerM3(double temperatureC) {
        return basis == FlowBasis.OWN_STATE ? densityKgPerM3(temperatureC) : countKgPerM3;
    }

    double exhaustKgPerM3() {
        return enteredKgPerM3(indoorC);
    }

    /** Temperature that sets density and viscosity of air on its way in or out through a hole. */
    private double leakC(boolean inwards) {
        if (basis == FlowBasis.OWN_STATE) {
            return inwards ? outdoorC : indoorC;
        }
        return countC;
    }

    double leakKgPerM3(boolean inwards) {
        return enteredKgPerM3(leakC(inwards));
    }

    double leakViscosityPaS(boolean inwards) {
        return MoistAir.viscosityPaS(leakC(inwards));
    }

    /** What a fan's rated pressure becomes: under OWN_STATE ratings count in standard air and fall with the density. */
    double fanPressureFactor() {
        return basis == FlowBasis.OWN_STATE ? densityKgPerM3(indoorC) / STANDARD_KG_PER_M3 : 1;
    }

    /**
     * By how much the envelope's flow differs from the entered one because the air in the cracks is not the reference
     * air of the test (20 °C at sea level): (μ0/μ)^(2n−1) (ρ0/ρ)^(1−n), the correction of ASTM E779 turned round, from
     * memory. 1 unless the basis is OWN_STATE.
     */
    double leakFactor(boolean inwards, double exponent) {
        if (basis != FlowBasis.OWN_STATE) {
            return 1;
        }
        return Math.pow(MoistAir.viscosityPaS(STANDARD_C) / leakViscosityPaS(inwards), 2 * exponent - 1)
                * Math.pow(STANDARD_KG_PER_M3 / leakKgPerM3(inwards), 1 - exponent);
    }
}
