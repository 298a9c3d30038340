package oakum.physics.hygrothermal;

/** Hears how far a run is, and may end it. */
@FunctionalInterface
public interface RunControl {
    /** Lets a run go through. */
    RunControl NONE = (hoursDone, hours) -> true;

    /**
     * Called after every simulated day.
     *
     * @return whether to go on; when false the run ends and keeps what it has
     */
    boolean goOn(int hoursDone, int hours);
}
