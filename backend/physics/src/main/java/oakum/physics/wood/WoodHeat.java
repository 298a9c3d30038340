package oakum.physics.wood;

/** How wood carries and stores heat (USDA Wood Handbook FPL-GTR-190 eq. 4-15 to 4-17). */
public final class WoodHeat {
    private static final double PERCENT = 100;

    private WoodHeat() {}

    /**
     * Specific gravity at a moisture, from the basic one.
     *
     * @param basicGravity oven-dry mass over green volume, 0.2 to 1.2
     * @param volumetricShrinkagePercent green to oven dry
     * @param moistureFraction water over dry mass, 0 or more
     */
    public static double gravity(double basicGravity, double volumetricShrinkagePercent, double moistureFraction) {
        double shrunk = WoodSpecies.Shrinkage.atMoisture(volumetricShrinkagePercent, moistureFraction);
        return basicGravity / (1 - shrunk / PERCENT);
    }

    /**
     * Conductivity across the grain at about 24 °C.
     *
     * @param gravity oven-dry mass over the volume at this moisture, above 0.3
     * @param moistureFraction 0 to 0.25
     */
    public static double conductivityWPerMK(double gravity, double moistureFraction) {
        return gravity * (0.1941 + 0.004064 * PERCENT * moistureFraction) + 0.01864;
    }

    /**
     * Heat capacity of moist wood.
     *
     * @param temperatureC 7 to 147 (280 to 420 K)
     * @param moistureFraction water over dry mass, 0 to 0.30
     */
    public static double heatCapacityJPerKgK(double temperatureC, double moistureFraction) {
        double kelvin = temperatureC + 273.15;
        double moisture = PERCENT * moistureFraction;
        double dry = 0.1031 + 0.003867 * kelvin;
        double bound = moisture * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * moisture);
        return 1000 * ((dry + 4.18 * moistureFraction) / (1 + moistureFraction) + bound);
    }
}
