package oakum.physics.fastening;

import oakum.physics.calculation.Labelled;

/** Terrain around a house (ASCE 7-16 table 26.11-1). */
public enum WindExposure implements Labelled {
    B("B: town, wood, many obstructions", 7.0, 1200, 0.70),
    C("C: open country with scattered obstructions", 9.5, 900, 0),
    D("D: flat, unobstructed, or beside water", 11.5, 700, 0);

    private static final double LEAST_HEIGHT_FT = 15;

    private final String label;
    private final double alpha;
    private final double gradientFt;
    private final double leastForCladding;

    WindExposure(String label, double alpha, double gradientFt, double leastForCladding) {
        this.label = label;
        this.alpha = alpha;
        this.gradientFt = gradientFt;
        this.leastForCladding = leastForCladding;
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * Velocity pressure exposure coefficient for cladding.
     *
     * @param heightM 0 to 18.3; below 4.6 m the value at 4.6 m
     */
    public double coefficient(double heightM) {
        double heightFt = Math.max(heightM / Imperial.FOOT_M, LEAST_HEIGHT_FT);
        return Math.max(2.01 * Math.pow(heightFt / gradientFt, 2 / alpha), leastForCladding);
    }
}
