package oakum.physics.fastening;

/** The standards of this package print their equations in inches, pounds and feet. */
final class Imperial {
    static final double INCH_M = 0.0254;
    static final double POUND_N = 4.4482216152605;
    static final double FOOT_M = 0.3048;
    static final double POUND_PER_INCH_N_PER_M = POUND_N / INCH_M;
    static final double POUND_PER_SQUARE_FOOT_PA = POUND_N / (FOOT_M * FOOT_M);

    private Imperial() {}
}
