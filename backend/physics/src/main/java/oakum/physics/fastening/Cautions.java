package oakum.physics.fastening;

import oakum.physics.calculation.Caution;

/** What can hurt someone where cladding is held too weakly. */
final class Cautions {
    static final Caution STRUCTURE = new Caution(
            "Structure",
            "Cladding that comes off kills. This number prepares a talk with the licensed engineer and replaces none: the"
                    + " engineer designs the attachment, and local code and the adopted standard rule.");

    private Cautions() {}
}
