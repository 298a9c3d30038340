package oakum.physics.wood;

import oakum.physics.calculation.Labelled;
import org.jspecify.annotations.Nullable;

/** Shrinkage and movement of a species; means over many trees. */
public enum WoodSpecies implements Labelled {
    RED_OAK("red oak", new Shrinkage(4.0, 8.6, 13.7), false, .00158, .00369),
    WHITE_OAK("white oak", new Shrinkage(5.6, 10.5, 16.3), true, .00180, .00365),
    SUGAR_MAPLE("sugar maple", new Shrinkage(4.8, 9.9, 14.7), false, .00165, .00353),
    RED_MAPLE("red maple", null, false, .00137, .00289),
    WHITE_ASH("white ash", new Shrinkage(4.9, 7.8, 13.3), true, .00169, .00274),
    BEECH("American beech", new Shrinkage(5.5, 11.9, 17.2), true, .00190, .00431),
    YELLOW_BIRCH("yellow birch", new Shrinkage(7.3, 9.5, 16.8), true, .00256, .00338),
    BLACK_CHERRY("black cherry", new Shrinkage(3.7, 7.1, 11.5), true, .00126, .00248),
    BLACK_WALNUT("black walnut", new Shrinkage(5.5, 7.8, 12.8), true, .00190, .00274),
    HICKORY_PECAN("hickory, pecan", new Shrinkage(4.9, 8.9, 13.6), true, .00169, .00315),
    HICKORY_TRUE("hickory, true", null, false, null, .00411),
    SOUTHERN_YELLOW_PINE("southern yellow pine", null, false, null, .00265),
    HEART_PINE("heart pine", null, false, null, .00263),
    DOUGLAS_FIR_COAST("Douglas-fir, coast", new Shrinkage(4.8, 7.6, 12.4), true, null, .00267),
    DOUGLAS_FIR_INTERIOR("Douglas-fir, interior north", new Shrinkage(3.8, 6.9, 10.7), true, null, null),
    WESTERN_REDCEDAR("western redcedar", new Shrinkage(2.4, 5.0, 6.8), true, null, null),
    NORTHERN_WHITE_CEDAR("northern white-cedar", new Shrinkage(2.2, 4.9, 7.2), true, null, null),
    BALSAM_FIR("balsam fir", new Shrinkage(2.9, 6.9, 11.2), true, null, null),
    WHITE_FIR("white fir", new Shrinkage(3.3, 7.0, 9.8), true, null, null),
    RED_SPRUCE("red spruce", new Shrinkage(3.8, 7.8, 11.8), false, null, null),
    ENGELMANN_SPRUCE("Engelmann spruce", new Shrinkage(3.8, 7.1, 11.0), false, null, null),
    SITKA_SPRUCE("Sitka spruce", new Shrinkage(4.3, 7.5, 11.5), false, null, null);

    private static final double SHRINKAGE_PERCENT_PER_COEFFICIENT = 2850;

    private final String label;
    private final @Nullable Shrinkage shrinkage;
    private final boolean shrinkageSeen;
    private final @Nullable Double radialPerPercent;
    private final @Nullable Double tangentialPerPercent;

    WoodSpecies(
            String label,
            @Nullable Shrinkage shrinkage,
            boolean shrinkageSeen,
            @Nullable Double radialPerPercent,
            @Nullable Double tangentialPerPercent) {
        this.label = label;
        this.shrinkage = shrinkage;
        this.shrinkageSeen = shrinkageSeen;
        this.radialPerPercent = radialPerPercent;
        this.tangentialPerPercent = tangentialPerPercent;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        String movement = tangentialPerPercent == null
                ? "movement estimated from shrinkage"
                : "movement of USDA Wood Handbook table 13-5";
        if (shrinkage == null) {
            return movement;
        }
        return movement + "; shrinkage of table 4-3" + (shrinkageSeen ? "" : " (from memory)");
    }

    /** Shrinkage from green to oven dry; null where the sheet at hand has none. */
    public @Nullable Shrinkage shrinkage() {
        return shrinkage;
    }

    /**
     * Change of a board's width per % of moisture, as a share of its width.
     *
     * @return null where neither a coefficient nor a shrinkage is known
     */
    public @Nullable Double changePerPercent(BoardCut cut) {
        Double listed = listed(cut);
        if (listed != null || shrinkage == null) {
            return listed;
        }
        double percent = cut == BoardCut.FLAT_SAWN ? shrinkage.tangentialPercent() : shrinkage.radialPercent();
        return percent / SHRINKAGE_PERCENT_PER_COEFFICIENT;
    }

    /** Whether {@link #changePerPercent} is an estimate. */
    public boolean isEstimated(BoardCut cut) {
        return listed(cut) == null;
    }

    private @Nullable Double listed(BoardCut cut) {
        return cut == BoardCut.FLAT_SAWN ? tangentialPerPercent : radialPerPercent;
    }

    /**
     * Shrinkage from green to oven dry, % of the green size.
     *
     * @param radialPercent across the rings
     * @param tangentialPercent along the rings
     * @param volumetricPercent of the volume
     */
    public record Shrinkage(double radialPercent, double tangentialPercent, double volumetricPercent) {
        /**
         * The part of a shrinkage that has come at a moisture (USDA Wood Handbook eq. 4-7): none from 30 % up.
         *
         * @param fullPercent green to oven dry
         * @param moistureFraction water over dry mass, 0 or more
         */
        public static double atMoisture(double fullPercent, double moistureFraction) {
            double dried = 1 - moistureFraction / WoodMoisture.FIBRE_SATURATION_FRACTION;
            return fullPercent * Math.max(dried, 0);
        }
    }
}
