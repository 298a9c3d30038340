package oakum.physics.hygrothermal;

/** Takes the hours of a run as they are computed; nothing of them is held by the run. */
@FunctionalInterface
public interface HourSink {
    /** A sink for those who want the result only. */
    HourSink NONE = hour -> {};

    /**
     * Takes one hour.
     *
     * @param hour the state at the end of the hour; the same object every time, valid until this method returns
     */
    void accept(HourView hour);
}
