package oakum.portal.view;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Stage;
import oakum.portal.people.Role;

/**
 * What one person sees in one role: only houses in which they hold it.
 *
 * @param now the moment of looking
 * @param office the office's zone; matters of the firm follow its day, matters of a house the house's
 */
record Sight(Role role, List<HouseView> houses, Shown shown, Instant now, ZoneId office) {
    LocalDate today() {
        return LocalDate.ofInstant(now, office);
    }

    LocalDate today(HouseView house) {
        return dayOf(house, now);
    }

    LocalDate dayOf(HouseView house, Instant at) {
        return LocalDate.ofInstant(at, ZoneId.of(house.timeZone()));
    }

    /** "Wed 20 May", by the calendar of the house. */
    String day(HouseView house, Instant at) {
        return Words.day(dayOf(house, at), today(house));
    }

    String day(HouseView house, LocalDate day) {
        return Words.day(day, today(house));
    }

    /** Houses between two stages, both included. */
    Sight between(Stage first, Stage last) {
        return new Sight(
                role,
                houses.stream()
                        .filter(h ->
                                h.stage().compareTo(first) >= 0 && h.stage().compareTo(last) <= 0)
                        .toList(),
                shown,
                now,
                office);
    }

    /** Asks each house in turn. */
    <T> List<T> all(Function<HouseView, Stream<T>> of) {
        return houses.stream().flatMap(of).toList();
    }

    List<StartPage.HouseName> names() {
        return houses.stream()
                .map(h -> new StartPage.HouseName(h.id(), h.name()))
                .toList();
    }

    boolean sees(String houseId) {
        return houses.stream().anyMatch(h -> h.id().equals(houseId));
    }

    HouseView house(String houseId) {
        return houses.stream().filter(h -> h.id().equals(houseId)).findFirst().orElseThrow();
    }
}
