package oakum.physics.envelope;

import oakum.physics.calculation.Caution;

/** What the steady methods cannot see. */
final class Cautions {
    static final Caution SCREENING = new Caution(
            "Moisture",
            "Steady diffusion only: no air leakage, rain, sun, stored water, liquid transport, built-in moisture or ground."
                    + " Air that leaks can carry far more water than diffuses. It sorts variants; it proves no wall and"
                    + " condemns none.");
    static final Caution MOULD = new Caution(
            "Mould",
            "Dampness and mould can make people ill. Where mould is seen or smelt, have a qualified person look at it"
                    + " whatever this page says.");

    private Cautions() {}
}
