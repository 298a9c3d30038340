package oakum.physics.rainscreen;

import oakum.physics.calculation.Caution;

/** What can hurt someone behind a cladding. */
final class Cautions {
    static final Caution FIRE = new Caution(
            "Fire",
            "A ventilated cavity carries fire upward, and open joints bypass its barriers. Barriers and their places are"
                    + " set by local code; a licensed designer decides.");

    static final Caution MOULD = new Caution(
            "Mould",
            "A cavity that moves air does not dry a wall that is wetted faster. Water that is trapped behind a sealed"
                    + " edge leads to mould and decay.");

    private Cautions() {}
}
