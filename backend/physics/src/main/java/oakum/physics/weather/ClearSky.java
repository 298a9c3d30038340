package oakum.physics.weather;

/**
 * Irradiance under a cloudless sky (ASHRAE Fundamentals ch. 14): direct facing the sun, and diffuse on level ground.
 *
 * @param directNormalWPerM2 from the sun alone, facing it
 * @param diffuseHorizontalWPerM2 from the sky alone, on level ground
 */
public record ClearSky(double directNormalWPerM2, double diffuseHorizontalWPerM2) {

    /** The air mass exponents; the optical depths of a place go with one edition. */
    public enum Edition {
        /** Handbook of 2009; its printed diffuse exponent has a wrong sign, its worked example the right one. */
        HANDBOOK_2009 {
            @Override
            double direct(double tb, double td) {
                return 1.219 - 0.043 * tb - 0.151 * td - 0.204 * tb * td;
            }

            @Override
            double diffuse(double tb, double td) {
                return 0.202 + 0.852 * tb - 0.007 * td - 0.357 * tb * td;
            }
        },
        /** Handbook of 2013 and later (from memory). */
        HANDBOOK_2013 {
            @Override
            double direct(double tb, double td) {
                return 1.454 - 0.406 * tb - 0.268 * td + 0.021 * tb * td;
            }

            @Override
            double diffuse(double tb, double td) {
                return 0.507 + 0.205 * tb - 0.080 * td - 0.190 * tb * td;
            }
        };

        abstract double direct(double tb, double td);

        abstract double diffuse(double tb, double td);
    }

    /**
     * The clear sky at a height of the sun.
     *
     * @param directDepth optical depth for direct light, τb, of the month and place
     * @param diffuseDepth optical depth for diffuse light, τd
     * @param elevationDeg of the sun; at or below 0 there is no light
     * @param dayOfYear 1 to 366
     */
    public static ClearSky of(
            Edition edition, double directDepth, double diffuseDepth, double elevationDeg, double dayOfYear) {
        if (elevationDeg <= 0) {
            return new ClearSky(0, 0);
        }
        double e0 = SolarRadiation.extraterrestrialNormalWPerM2(dayOfYear);
        double m = SolarRadiation.airMass(elevationDeg);
        return new ClearSky(
                e0 * Math.exp(-directDepth * Math.pow(m, edition.direct(directDepth, diffuseDepth))),
                e0 * Math.exp(-diffuseDepth * Math.pow(m, edition.diffuse(directDepth, diffuseDepth))));
    }
}
