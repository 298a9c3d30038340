package oakum.physics.weather;

import oakum.physics.calculation.Labelled;

/** How bright each part of the sky is taken: what diffuse light a tilted surface receives. */
public enum SkyModel implements Labelled {
    ISOTROPIC("sky equally bright", "Liu and Jordan 1963") {
        @Override
        public double diffuseWPerM2(SkyLight sky, double tiltDeg, double cosIncidence) {
            return sky.diffuseHorizontalWPerM2() * fromDome(tiltDeg);
        }
    },

    /** Adds the bright ring around the sun. */
    BRIGHT_AROUND_SUN("brighter around the sun", "Hay and Davies 1980") {
        @Override
        public double diffuseWPerM2(SkyLight sky, double tiltDeg, double cosIncidence) {
            double ring = sky.directNormalWPerM2() / sky.extraterrestrialNormalWPerM2();
            double ratio = Math.max(cosIncidence, 0) / Math.max(cos(sky.zenithDeg()), 0.01745);
            return sky.diffuseHorizontalWPerM2() * (ring * ratio + (1 - ring) * fromDome(tiltDeg));
        }
    },

    /** Adds the bright ring and the horizon; the closest to measurements, and the one to use for walls. */
    BRIGHT_SUN_AND_HORIZON(
            "brighter around the sun and at the horizon", "Perez et al. 1990, all sites composite; from memory") {
        @Override
        public double diffuseWPerM2(SkyLight sky, double tiltDeg, double cosIncidence) {
            double dhi = sky.diffuseHorizontalWPerM2();
            if (dhi <= 0) {
                return 0;
            }
            double z = Math.toRadians(sky.zenithDeg());
            double cubed = 1.041 * z * z * z;
            double clearness = ((dhi + sky.directNormalWPerM2()) / dhi + cubed) / (1 + cubed);
            double brightness = dhi * sky.airMass() / sky.extraterrestrialNormalWPerM2();
            double[] f = BRIGHTNESS_COEFFICIENTS[bin(clearness)];
            double f1 = Math.max(0, f[0] + f[1] * brightness + f[2] * z);
            double f2 = f[3] + f[4] * brightness + f[5] * z;
            double ratio = Math.max(0, cosIncidence) / Math.max(cos(85), cos(sky.zenithDeg()));
            return Math.max(
                    0, dhi * ((1 - f1) * fromDome(tiltDeg) + f1 * ratio + f2 * Math.sin(Math.toRadians(tiltDeg))));
        }

        private int bin(double clearness) {
            int bin = 0;
            while (bin < CLEARNESS_BINS.length && clearness >= CLEARNESS_BINS[bin]) {
                bin++;
            }
            return bin;
        }
    };

    private static final double[] CLEARNESS_BINS = {1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2};
    private static final double[][] BRIGHTNESS_COEFFICIENTS = {
        {-.008, .588, -.062, -.060, .072, -.022},
        {.130, .683, -.151, -.019, .066, -.029},
        {.330, .487, -.221, .055, -.064, -.026},
        {.568, .187, -.295, .109, -.152, -.014},
        {.873, -.392, -.362, .226, -.462, .001},
        {1.132, -1.237, -.412, .288, -.823, .056},
        {1.060, -1.600, -.359, .264, -1.127, .131},
        {.678, -.327, -.250, .156, -1.377, .251}
    };

    private final String label;
    private final String source;

    SkyModel(String label, String source) {
        this.label = label;
        this.source = source;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return source;
    }

    /**
     * Diffuse light from the sky on a tilted surface, W/m².
     *
     * @param tiltDeg 0 level, 90 a wall
     * @param cosIncidence of the sun on the surface, see {@link SolarPosition#cosIncidence}
     */
    public abstract double diffuseWPerM2(SkyLight sky, double tiltDeg, double cosIncidence);

    /** The share of an even sky that a tilted surface sees. */
    static double fromDome(double tiltDeg) {
        return (1 + cos(tiltDeg)) / 2;
    }

    /**
     * Light that the ground throws back on a tilted surface, W/m².
     *
     * @param albedo share that the ground throws back, 0 to 1; 0.2 without snow
     */
    public static double fromGroundWPerM2(double globalHorizontalWPerM2, double albedo, double tiltDeg) {
        return albedo * globalHorizontalWPerM2 * (1 - cos(tiltDeg)) / 2;
    }

    private static double cos(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }

    /**
     * What the sky sends at one moment.
     *
     * @param directNormalWPerM2 from the sun alone, facing it
     * @param diffuseHorizontalWPerM2 from the sky alone, on level ground
     * @param zenithDeg of the sun
     * @param extraterrestrialNormalWPerM2 above the air, facing the sun
     * @param airMass relative air mass
     */
    public record SkyLight(
            double directNormalWPerM2,
            double diffuseHorizontalWPerM2,
            double zenithDeg,
            double extraterrestrialNormalWPerM2,
            double airMass) {}
}
