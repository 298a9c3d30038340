package oakum.physics.mould;

import oakum.physics.calculation.Caution;

/** What can hurt someone where wood and boards stay wet. */
final class Cautions {
    static final Caution MOULD = new Caution(
            "Mould",
            "Mould can harm health, and this number says nothing about health: it models visible growth on a surface whose"
                    + " climate is known, to about one index step either way. Growth in hidden air paths is not in it."
                    + " Where mould is seen or smelt, stop the water first and ask a person qualified to assess it.");

    static final Caution STRUCTURE = new Caution(
            "Structure",
            "Decayed wood loses strength before it looks decayed. A licensed engineer judges a member that was wet; local"
                    + " code rules what may stay.");

    private Cautions() {}
}
