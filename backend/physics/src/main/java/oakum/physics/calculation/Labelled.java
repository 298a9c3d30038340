package oakum.physics.calculation;

/** A constant of a choice that people see. */
public interface Labelled {
    /** What the trade calls it. */
    String label();

    /** Where the constant's values come from; empty where it carries none. */
    default String source() {
        return "";
    }
}
