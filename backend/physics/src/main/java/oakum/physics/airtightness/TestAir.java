package oakum.physics.airtightness;

import oakum.physics.moistair.MoistAir;

/** Density and viscosity of the air of a fan-pressurisation test, as each standard prints them. */
final class TestAir {
    /** Viscosity at 20 °C, Pa·s. */
    static final double REFERENCE_VISCOSITY_PA_S = MoistAir.viscosityPaS(20);

    private TestAir() {}

    /** Density of dry air at an altitude, kg/m³ (ASTM E779, from memory). */
    static double densityAtAltitudeKgPerM3(double temperatureC, double altitudeM) {
        return densityKgPerM3(temperatureC, Math.pow(1 - 0.0065 * altitudeM / 293, 5.2553));
    }

    /** The same where the air pressure is measured. */
    static double densityAtPressureKgPerM3(double temperatureC, double pressurePa) {
        return densityKgPerM3(temperatureC, pressurePa / MoistAir.STANDARD_PRESSURE_PA);
    }

    private static double densityKgPerM3(double temperatureC, double pressureShare) {
        return PowerLaw.REFERENCE_DENSITY_KG_PER_M3 * pressureShare * 293 / (temperatureC + 273);
    }

    /** Density of moist air, kg/m³ (ISO 9972, from memory). */
    static double moistDensityKgPerM3(double temperatureC, double relativeHumidityFraction, double pressurePa) {
        double t = temperatureC + MoistAir.ZERO_C_IN_K;
        double vapour = relativeHumidityFraction * Math.exp(59.484085 - 6790.4985 / t - 5.02802 * Math.log(t));
        return (pressurePa - 0.37802 * vapour) / (287.055 * t);
    }
}
