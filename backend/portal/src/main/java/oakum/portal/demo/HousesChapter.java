package oakum.portal.demo;

import java.time.LocalDate;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Houses;
import oakum.portal.houserecord.PartKind;
import oakum.portal.people.Role;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** The three houses with their parts, and the houses of the care list. */
@Component
@Order(1)
class HousesChapter implements DemoChapter {
    private final Houses houses;
    private final HouseRecord record;
    private final DemoEnclosures enclosures;
    private final DemoReadings readings;
    private final DemoWeather weather;

    HousesChapter(
            Houses houses, HouseRecord record, DemoEnclosures enclosures, DemoReadings readings, DemoWeather weather) {
        this.houses = houses;
        this.record = record;
        this.enclosures = enclosures;
        this.readings = readings;
        this.weather = weather;
    }

    @Override
    public void tell(DemoFirm.Telling telling) {
        open(telling, DemoRecords.h3(), LocalDate.of(2024, 3, 4), "Design of Gannet Cove");
        open(telling, DemoRecords.h2(), LocalDate.of(2025, 6, 2), "Design of North Tamarack");
        open(telling, DemoRecords.h1(), LocalDate.of(2026, 3, 20), "Concept agreed with the owner");
        careList(telling);
        telling.on(LocalDate.of(2024, 9, 10), 9, 0, "office", readings::addSensors);
        telling.person("mechanical", "mechanical contractor", Role.MECHANICAL_CONTRACTOR, "H1");
        telling.person("mechanical", "mechanical contractor", Role.MECHANICAL_CONTRACTOR, "H2");
        telling.person("mechanical", "mechanical contractor", Role.MECHANICAL_CONTRACTOR, "H3");
        telling.person("owner", "owner of Gannet Cove", Role.OWNER, "H3");
        telling.person("owner-h1", "owner of Saddle Spruce", Role.OWNER, "H1");
        telling.person("owner-h2", "owner of North Tamarack", Role.OWNER, "H2");
        telling.person("consultant", "consultant", Role.CONSULTANT, "H1");
    }

    private void open(DemoFirm.Telling telling, DemoRecords.DemoHouse house, LocalDate day, String reason) {
        telling.on(day, 9, 0, "designer", () -> {
            houses.create(house.id(), house.measures().withWeather(weather.yearAt(house.measures())), reason);
            record.save(house.id(), PartKind.ENCLOSURE, enclosures.of(house.id()), reason);
            record.save(house.id(), PartKind.AIR, house.air(), reason);
            record.save(house.id(), PartKind.HEAT, house.heat(), reason);
            record.save(house.id(), PartKind.MOISTURE, house.moisture(), reason);
            record.save(house.id(), PartKind.WATER, house.water(), reason);
            record.save(house.id(), PartKind.SENSORS, house.sensors(), reason);
        });
    }

    private void careList(DemoFirm.Telling telling) {
        String reason = "Taken into care";
        telling.on(LocalDate.of(2025, 1, 15), 9, 0, "designer", () -> {
            for (int n = 1; n <= 4; n++) {
                care(n, "coast", 20, "America/New_York", reason);
            }
            for (int n = 5; n <= 8; n++) {
                care(n, "north", 420, "America/Chicago", reason);
            }
            for (int n = 9; n <= 11; n++) {
                care(n, "valley", 2300, "America/Denver", reason);
            }
        });
    }

    private void care(int number, String place, double altitudeM, String timeZone, String reason) {
        String id = String.format("B%02d", number);
        houses.create(id, DemoRecords.careHouse("Care " + id, place, altitudeM, timeZone), reason);
    }
}
