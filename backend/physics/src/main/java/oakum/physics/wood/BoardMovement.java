package oakum.physics.wood;

/** How far a free board moves; a fastened one moves less. Moisture is water over dry mass, a fraction. */
public final class BoardMovement {
    private static final double PERCENT = 100;

    private BoardMovement() {}

    /**
     * Growth of a board's width, negative where it shrinks (USDA Wood Handbook ch. 13; from 6 to 14 %).
     *
     * @param widthM above 0
     * @param changePerPercent share of the width per % of moisture
     */
    public static double widthChangeM(
            double widthM, double changePerPercent, double fromMoistureFraction, double toMoistureFraction) {
        return widthM * changePerPercent * PERCENT * (toMoistureFraction - fromMoistureFraction);
    }

    /**
     * Depth of the hollow where the two faces of a board differ in moisture; the dry face is the hollow one.
     *
     * @param changePerPercent along the face, share of the width per % of moisture
     * @param differenceFraction moisture of the wet face less that of the dry face, 0 or more
     */
    public static double cupFromFacesM(
            double widthM, double thicknessM, double changePerPercent, double differenceFraction) {
        return changePerPercent * PERCENT * differenceFraction * widthM * widthM / (8 * thicknessM);
    }

    /**
     * Depth of the hollow where a flat-sawn board dries evenly: its edges lift on the side of the bark.
     *
     * @param tangentialPerPercent along the rings
     * @param radialPerPercent across the rings
     * @param driedFraction moisture that left, 0 or more
     * @param toPithM from the middle of the board to the pith, above 0
     */
    public static double cupFromRingsM(
            double widthM, double tangentialPerPercent, double radialPerPercent, double driedFraction, double toPithM) {
        return (tangentialPerPercent - radialPerPercent) * PERCENT * driedFraction * widthM * widthM / (4 * toPithM);
    }
}
