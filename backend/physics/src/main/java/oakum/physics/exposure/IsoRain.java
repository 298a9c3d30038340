package oakum.physics.exposure;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;

/**
 * Driving rain on a wall by the hour (ISO 15927-3, the method from wind and rain by the hour).
 *
 * @param roughness C_R, from land and height, see {@link Land#roughness}
 * @param topography C_T, 1 on level ground
 * @param obstruction O, 0.2 close behind another building to 1 in the open
 * @param wall W, 0.3 to 0.5 for a wall of two storeys
 */
public record IsoRain(double roughness, double topography, double obstruction, double wall) implements RainOnWall {
    static final Source SOURCE = Source.fromMemory("ISO 15927-3:2009, from wind and rain by the hour");

    /** Rain in the open through a plane that faces the wind, kg/(m²·h): 2/9 · v · r^(8/9) · cos, none in the lee. */
    public static double freeFieldKgPerM2H(double windMPerS, double angleDeg, double rainKgPerM2H) {
        double facing = Math.cos(Math.toRadians(angleDeg));
        return facing <= 0 || rainKgPerM2H <= 0 ? 0 : 2.0 / 9 * windMPerS * Math.pow(rainKgPerM2H, 8.0 / 9) * facing;
    }

    @Override
    public double liquidKgPerM2H(double windMPerS, double angleDeg, double rainKgPerM2H) {
        return onWall(freeFieldKgPerM2H(windMPerS, angleDeg, rainKgPerM2H));
    }

    /** On the wall, of an hour's or a year's rain in the open. */
    public double onWall(double freeField) {
        return freeField * roughness * topography * obstruction * wall;
    }

    /** Roughness of the land upwind. */
    public enum Land implements Labelled {
        WATER("I, open water or flat country without obstacles", .17, .01, 2),
        FARM("II, farm land with hedges, single buildings", .19, .05, 4),
        SUBURB("III, suburb, industry, wood", .22, .3, 8),
        TOWN("IV, town with buildings over 15 m", .24, 1, 16);

        private final String label;
        private final double factor;
        private final double lengthM;
        private final double leastHeightM;

        Land(String label, double factor, double lengthM, double leastHeightM) {
            this.label = label;
            this.factor = factor;
            this.lengthM = lengthM;
            this.leastHeightM = leastHeightM;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return SOURCE.printed();
        }

        /**
         * C_R = K_R ln(max(z, z_min)/z_0).
         *
         * @param heightM of the place on the wall above ground
         */
        public double roughness(double heightM) {
            return factor * Math.log(Math.max(heightM, leastHeightM) / lengthM);
        }
    }
}
