package oakum.physics.exposure;

import oakum.physics.calculation.Source;

/** Rain that wind drives against a wall. Snow does not count: below 0 °C there is none. */
public interface RainOnWall {
    Source BELOW_FREEZING = Source.commonPractice("precipitation below 0 °C is not counted as driving rain");

    /**
     * Rain on the wall in an hour of liquid precipitation, kg/(m²·h).
     *
     * @param windMPerS at 10 m above open ground
     * @param angleDeg between where the wind comes from and the outward normal of the wall
     * @param rainKgPerM2H on level ground
     */
    double liquidKgPerM2H(double windMPerS, double angleDeg, double rainKgPerM2H);

    /** Rain on the wall in an hour, kg/(m²·h); none below 0 °C. */
    default double kgPerM2H(double windMPerS, double angleDeg, double rainKgPerM2H, double temperatureC) {
        return temperatureC < 0 ? 0 : liquidKgPerM2H(windMPerS, angleDeg, rainKgPerM2H);
    }
}
