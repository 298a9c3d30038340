package oakum.physics.hygrothermal;

/** What surrounds a wall, over time. Asked in any order; must answer the same each time it is asked the same. */
@FunctionalInterface
public interface Climate {
    /**
     * Fills in what surrounds the wall at an instant.
     *
     * @param hour number of the hour, counted from 0 at the start of the run
     * @param fraction how much of that hour has passed, 0 to 1; 1 still belongs to this hour
     * @param state to be filled completely
     */
    void at(int hour, double fraction, ClimateState state);
}
