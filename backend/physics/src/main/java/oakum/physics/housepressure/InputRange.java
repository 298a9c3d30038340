package oakum.physics.housepressure;

/** Why the inputs of this package have the ranges they have. */
final class InputRange {
    static final String PLAUSIBLE = "plausible range for a house, proposed here, no published source";
    static final String EXPONENT = "0.5 is fully turbulent, 1 is laminar flow (ISO 9972, from memory)";
    static final String GEOMETRY = "a size is above zero";
    static final String MODEL_CODE = "plausible range of the rule, proposed here, no published source";

    private InputRange() {}
}
