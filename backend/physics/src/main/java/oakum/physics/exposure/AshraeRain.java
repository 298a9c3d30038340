package oakum.physics.exposure;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;

/**
 * Driving rain on a wall (ASHRAE 160, section 4.6): F_E · F_D · 0.2 · U · cos Θ · r.
 *
 * @param exposureFactor F_E, see {@link Site#factor}
 * @param depositionFactor F_D, see {@link Deposition}
 */
public record AshraeRain(double exposureFactor, double depositionFactor) implements RainOnWall {
    static final Source SOURCE = Source.fromMemory("ANSI/ASHRAE 160, section 4.6; its form seen in an open digest");

    /** F_L, kg·s/(m³·mm). */
    private static final double RAIN_FACTOR = 0.2;

    /** Share of the rain on the wall that comes behind the cladding, unless the wall was tested. */
    public static final double ENTERING_FRACTION = 0.01;

    @Override
    public double liquidKgPerM2H(double windMPerS, double angleDeg, double rainKgPerM2H) {
        double facing = Math.max(0, Math.cos(Math.toRadians(angleDeg)));
        return exposureFactor * depositionFactor * RAIN_FACTOR * windMPerS * facing * rainKgPerM2H;
    }

    /** How open the house stands. */
    public enum Site implements Labelled {
        SEVERE("severe: hill top, coast, open country", 1.3, 1.3, 1.4, 1.5),
        MEDIUM("medium", 1.0, 1.1, 1.2, 1.3),
        SHELTERED("sheltered: trees and buildings, valley", 0.7, 0.8, 0.9, 1.1);

        private final String label;
        private final double below10;
        private final double below15;
        private final double below20;
        private final double below30;

        Site(String label, double below10, double below15, double below20, double below30) {
            this.label = label;
            this.below10 = below10;
            this.below15 = below15;
            this.below20 = below20;
            this.below30 = below30;
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
         * F_E.
         *
         * @param buildingHeightM 0 to 30; the table ends there
         */
        public double factor(double buildingHeightM) {
            if (buildingHeightM < 10) {
                return below10;
            }
            if (buildingHeightM < 15) {
                return below15;
            }
            return buildingHeightM < 20 ? below20 : below30;
        }
    }

    /** What stands above the wall. */
    public enum Deposition implements Labelled {
        STEEP_ROOF("below a steep roof", 0.35),
        LOW_ROOF("below a low roof", 0.5),
        RUN_OFF("rain runs down from above", 1);

        private final String label;
        private final double factor;

        Deposition(String label, double factor) {
            this.label = label;
            this.factor = factor;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return SOURCE.printed();
        }

        public double factor() {
            return factor;
        }
    }
}
