package oakum.portal.houserecord;

import oakum.physics.calculation.Labelled;

/** The volume on which an air change rate is counted. */
public enum VolumeBasis implements Labelled {
    NET("net air volume"),
    WITH_FLOORS("volume with floor depth");

    private final String label;

    VolumeBasis(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
