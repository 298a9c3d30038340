package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** A month with its days; no leap years. */
public enum MonthOfYear implements Labelled {
    JANUARY("January", 31),
    FEBRUARY("February", 28),
    MARCH("March", 31),
    APRIL("April", 30),
    MAY("May", 31),
    JUNE("June", 30),
    JULY("July", 31),
    AUGUST("August", 31),
    SEPTEMBER("September", 30),
    OCTOBER("October", 31),
    NOVEMBER("November", 30),
    DECEMBER("December", 31);

    static final double SECONDS_IN_DAY = 86_400;

    private final String label;
    private final int dayCount;

    MonthOfYear(String label, int dayCount) {
        this.label = label;
        this.dayCount = dayCount;
    }

    @Override
    public String label() {
        return label;
    }

    double seconds() {
        return dayCount * SECONDS_IN_DAY;
    }
}
