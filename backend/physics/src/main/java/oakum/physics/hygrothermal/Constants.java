package oakum.physics.hygrothermal;

import oakum.physics.moistair.Iso13788Saturation;

/** The constants of EN 15026 and ISO 13788, one set for the whole package. */
final class Constants {
    /** Vapour permeability of still air, kg/(m s Pa) (ISO 13788). */
    static final double STILL_AIR_PERMEABILITY_KG_PER_M_S_PA = 2.0e-10;

    /** Latent heat of evaporation at 0 °C, J/kg (EN 15026, from memory). */
    static final double LATENT_HEAT_J_PER_KG = 2.5e6;

    /** Heat capacity of liquid water, J/(kg K) (EN 15026, from memory). */
    static final double WATER_HEAT_CAPACITY_J_PER_KG_K = 4187;

    /** Heat capacity of air by volume, J/(m³ K): 1.2 kg/m³ of 1005 J/(kg K). */
    static final double AIR_HEAT_CAPACITY_J_PER_M3_K = 1.2 * 1005;

    static final double VAPOUR_GAS_CONSTANT_J_PER_KG_K = Iso13788Saturation.VAPOUR_GAS_CONSTANT_J_PER_KG_K;

    static final double ZERO_C_IN_K = 273.15;

    static final double SECONDS_PER_HOUR = 3600;

    private Constants() {}
}
