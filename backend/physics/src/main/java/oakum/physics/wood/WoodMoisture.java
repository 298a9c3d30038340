package oakum.physics.wood;

import oakum.physics.numerics.Roots;

/**
 * The moisture that wood comes to in air that stays: the sorption model of Hailwood and Horrobin with two hydrates, as
 * the USDA Wood Handbook FPL-GTR-190 fits it (eq. 4-5). One mean curve for many species: 1 to 2 % moisture either way.
 * For −1 to 130 °C and up to 95 % relative humidity; below −20 °C the value at −20 °C stands, above 95 % the curve runs
 * on to fibre saturation.
 */
public final class WoodMoisture {
    /** Moisture at which the cell walls are full and shrinkage begins, a fraction of the dry mass. */
    public static final double FIBRE_SATURATION_FRACTION = 0.30;

    /** The fit turns back below this temperature. */
    static final double COLDEST_C = -20;

    static final double WARMEST_C = 130;

    private static final double PRECISION = 1e-10;

    private WoodMoisture() {}

    /**
     * Equilibrium moisture, water over dry mass.
     *
     * @param temperatureC −20 to 130; colder counts as −20
     * @param relativeHumidityFraction 0 to 1
     * @return a fraction, 0 to about 0.28
     */
    public static double equilibriumFraction(double temperatureC, double relativeHumidityFraction) {
        double t = Math.max(temperatureC, COLDEST_C);
        double w = 349 + 1.29 * t + 0.0135 * t * t;
        double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
        double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
        double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
        double kh = k * relativeHumidityFraction;
        double bound = k1 * kh;
        double twice = k1 * k2 * kh * kh;
        return 18 / w * (kh / (1 - kh) + (bound + 2 * twice) / (1 + bound + twice));
    }

    /**
     * The relative humidity of air in which wood keeps its moisture: the inverse of {@link #equilibriumFraction}.
     *
     * @param temperatureC −20 to 130; colder counts as −20
     * @param moistureFraction 0 to the equilibrium at 100 %
     * @return a fraction, 0 to 1
     * @throws IllegalArgumentException where the wood is wetter than any air leaves it
     */
    public static double relativeHumidityFraction(double temperatureC, double moistureFraction) {
        double most = equilibriumFraction(temperatureC, 1);
        if (!(moistureFraction >= 0 && moistureFraction <= most)) {
            throw new IllegalArgumentException("moisture " + moistureFraction + " is outside 0 to " + most
                    + ", which air of 100 % leaves in wood at " + temperatureC + " °C");
        }
        return Roots.bracketed(rh -> equilibriumFraction(temperatureC, rh) - moistureFraction, 0, 1, PRECISION);
    }
}
