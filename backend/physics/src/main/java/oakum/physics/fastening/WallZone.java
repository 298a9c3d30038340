package oakum.physics.fastening;

import oakum.physics.calculation.Labelled;

/** Place on a wall (ASCE 7-16 components and cladding, h ≤ 60 ft). */
public enum WallZone implements Labelled {
    FIELD("zone 4: the field of the wall", -1.1),
    CORNER("zone 5: the strip along a corner", -1.4);

    private static final double SMALL_M2 = 10 * Imperial.FOOT_M * Imperial.FOOT_M;
    private static final double LARGE_M2 = 500 * Imperial.FOOT_M * Imperial.FOOT_M;
    private static final double SUCTION_ON_LARGE = -0.8;
    private static final double PRESSURE_ON_SMALL = 1.0;
    private static final double PRESSURE_ON_LARGE = 0.7;

    private final String label;
    private final double suctionOnSmall;

    WallZone(String label, double suctionOnSmall) {
        this.label = label;
        this.suctionOnSmall = suctionOnSmall;
    }

    @Override
    public String label() {
        return label;
    }

    /** Outward coefficient, negative, of an effective wind area above 0. */
    public double suctionCoefficient(double areaM2) {
        return between(suctionOnSmall, SUCTION_ON_LARGE, areaM2);
    }

    /** Inward coefficient of an effective wind area above 0. */
    public double pressureCoefficient(double areaM2) {
        return between(PRESSURE_ON_SMALL, PRESSURE_ON_LARGE, areaM2);
    }

    private static double between(double onSmall, double onLarge, double areaM2) {
        double area = Math.min(Math.max(areaM2, SMALL_M2), LARGE_M2);
        double share = Math.log(area / SMALL_M2) / Math.log(LARGE_M2 / SMALL_M2);
        return onSmall + (onLarge - onSmall) * share;
    }
}
