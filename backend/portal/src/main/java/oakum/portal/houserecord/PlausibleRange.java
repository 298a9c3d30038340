package oakum.portal.houserecord;

/** Why a part refuses a number although no standard forbids it. */
final class PlausibleRange {
    static final String SOURCE = "plausible range for a house, proposed by the project";

    private PlausibleRange() {}
}
