package oakum.physics.envelope;

/** Why a typed value is refused although no standard forbids it. */
final class InputRange {
    static final String PLAUSIBLE = "plausible range for a building, proposed here, no published source";
    static final String SATURATION = "ISO 13788 Annex E holds from −40 to 60 °C, from memory";

    private InputRange() {}
}
