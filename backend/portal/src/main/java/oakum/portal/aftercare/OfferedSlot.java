package oakum.portal.aftercare;

import java.time.LocalDate;

/**
 * A time at which somebody can come to a house.
 *
 * @param day by the calendar of the house
 * @param because why this day: whole words, and nothing about other people's houses
 */
public record OfferedSlot(LocalDate day, HalfDay half, String halfLabel, String because) {
    static OfferedSlot of(LocalDate day, HalfDay half, String because) {
        return new OfferedSlot(day, half, half.label(), because);
    }

    boolean is(ChosenSlot chosen) {
        return day.equals(chosen.day()) && half == chosen.half();
    }

    /** The one that an owner took. */
    public record ChosenSlot(LocalDate day, HalfDay half) {}
}
