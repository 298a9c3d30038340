package oakum.physics.material;

/** Why typed values are held inside ranges. */
final class PlausibleRange {
    static final String SOURCE = "plausible range of building materials, common practice, no published source";

    private PlausibleRange() {}
}
