package oakum.portal.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.PartKind;
import oakum.portal.people.Role;
import oakum.portal.site.CoverCheckShown;
import oakum.portal.site.CoverChecks;
import oakum.portal.site.LooseEnds;
import oakum.portal.site.NewClock;
import oakum.portal.site.NewLooseEnd;
import oakum.portal.site.Photos;
import oakum.portal.site.RowAnswer;
import oakum.portal.site.RowAnswerSent;
import oakum.portal.site.RunningClocks;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** H2 under construction: membrane in the sun, leaks found and fixed, a rough-in with two faults, one wet corner. */
@Component
@Order(3)
class SiteChapter implements DemoChapter {
    private static final LocalDate CLADDING = LocalDate.of(2026, 6, 8);

    private final CoverChecks checks;
    private final RunningClocks clocks;
    private final LooseEnds looseEnds;
    private final HouseRecord record;
    private final Photos photos;

    SiteChapter(CoverChecks checks, RunningClocks clocks, LooseEnds looseEnds, HouseRecord record, Photos photos) {
        this.checks = checks;
        this.clocks = clocks;
        this.looseEnds = looseEnds;
        this.record = record;
        this.photos = photos;
    }

    @Override
    public void tell(DemoFirm.Telling telling) {
        sunClocks(telling);
        measuredTightness(telling);
        roughIn(telling);
        insulation(telling);
    }

    private void sunClocks(DemoFirm.Telling telling) {
        String[] faces = {"south", "east", "north", "west"};
        int[] days = {16, 18, 20, 23};
        for (int i = 0; i < faces.length; i++) {
            String face = faces[i];
            LocalDate day = LocalDate.of(2026, 3, days[i]);
            telling.on(day, 16, 0, "site", () -> {
                clocks.start(
                        "H2",
                        new NewClock(
                                "membrane-" + face,
                                "Outer membrane, " + face + " face",
                                day,
                                90,
                                "data sheet of the membrane",
                                CLADDING));
            });
        }
    }

    private void measuredTightness(DemoFirm.Telling telling) {
        telling.on(LocalDate.of(2026, 5, 12), 15, 0, "designer", () -> {
            record.save(
                    "H2",
                    PartKind.AIR,
                    DemoRecords.measured(record.parts("H2").air(), 307, 0.667, "2026-05-12"),
                    "Measured on 12 May after the leaks were fixed");
        });
        LocalDate day = LocalDate.of(2026, 5, 12);
        telling.on(day, 16, 0, "site", () -> {
            checks.make("H2", "C8");
            right("C8", "8-02", null, day, 9);
            right("C8", "8-03", 0.44 / 0.6, day, 15);
            right("C8", "8-04", null, day, 15);
            right("C8", "8-05", null, day, 15);
            right("C8", "8-06", null, day, 15);
        });
        telling.on(day, 17, 0, "principal", () -> {
            right("C8", "8-01", null, day, 17);
            CoverCheckShown shown = checks.get("H2", "C8");
            checks.sign("H2", "C8", shown.copyCode());
        });
    }

    private void roughIn(DemoFirm.Telling telling) {
        LocalDate day = LocalDate.of(2026, 5, 11);
        telling.on(day, 14, 0, "site", () -> {
            checks.make("H2", "C10");
        });
        telling.on(day, 14, 30, "mechanical", () -> {
            right("C10", "10-01", null, day, 14);
            notRight(
                    "C10",
                    row("C10", "10-02", "return"),
                    null,
                    "No flex connector on the return end of the air handler.",
                    day,
                    14,
                    Role.MECHANICAL_CONTRACTOR,
                    LocalDate.of(2026, 5, 14),
                    "Fit the flex connector on the return end");
        });
    }

    private void insulation(DemoFirm.Telling telling) {
        LocalDate day = LocalDate.of(2026, 5, 13);
        telling.on(day, 8, 0, "site", () -> {
            checks.make("H2", "C9");
            right("C9", row("C9", "9-01", "north low"), 0.172, day, 8);
            right("C9", row("C9", "9-01", "north high"), 0.168, day, 8);
            right("C9", row("C9", "9-01", "west low"), 0.159, day, 8);
            right("C9", row("C9", "9-01", "south low"), 0.141, day, 8);
            notRight(
                    "C9",
                    row("C9", "9-01", "north-east corner high"),
                    0.194,
                    "Tarp at the window head led water in. Heater and fan are on it.",
                    day,
                    8,
                    Role.SITE_LEAD,
                    LocalDate.of(2026, 5, 18),
                    "Dry the north-east corner and read it again");
        });
        telling.on(LocalDate.of(2026, 5, 2), 18, 0, "site", () -> {
            looseEnds.open(
                    "H2",
                    new NewLooseEnd(
                            "The owner asks for 8 mm open joints in the cladding",
                            "The membrane on the wall is not made for light through open joints.",
                            Role.PRINCIPAL,
                            LocalDate.of(2026, 5, 20),
                            false));
        });
    }

    private String row(String check, String templateRow, String place) {
        return checks.get("H2", check).rows().stream()
                .filter(r -> r.id().startsWith(templateRow) && place.equals(r.place()))
                .findFirst()
                .orElseThrow()
                .id();
    }

    private void right(String check, String row, @Nullable Double value, LocalDate day, int hour) {
        checks.answer(
                "H2",
                check,
                row,
                new RowAnswerSent(
                        UUID.randomUUID(),
                        RowAnswer.RIGHT,
                        value,
                        null,
                        photosOf(check, row, day, hour),
                        at(day, hour),
                        null,
                        null));
    }

    private void notRight(
            String check,
            String row,
            @Nullable Double value,
            String note,
            LocalDate day,
            int hour,
            Role owner,
            LocalDate due,
            String what) {
        checks.answer(
                "H2",
                check,
                row,
                new RowAnswerSent(
                        UUID.randomUUID(),
                        RowAnswer.NOT_RIGHT,
                        value,
                        note,
                        photosOf(check, row, day, hour),
                        at(day, hour),
                        null,
                        new RowAnswerSent.FixAsked(owner, due, what)));
    }

    /** As many as the row asks for. */
    private List<UUID> photosOf(String check, String row, LocalDate day, int hour) {
        CoverCheckShown.CheckRowShown asked = checks.get("H2", check).rows().stream()
                .filter(r -> r.id().equals(row))
                .findFirst()
                .orElseThrow();
        String place = asked.place() == null ? "" : asked.place();
        return IntStream.range(0, asked.leastPhotos())
                .mapToObj(n -> {
                    UUID id = UUID.randomUUID();
                    String card = "H2 · " + check + " · " + asked.templateRow();
                    photos.keep(
                            "H2",
                            id,
                            DemoPhoto.of(card, place.isEmpty() ? day.toString() : place),
                            place,
                            card,
                            at(day, hour));
                    return id;
                })
                .toList();
    }

    private static Instant at(LocalDate day, int hour) {
        return DemoFirm.at(day, hour, 0);
    }
}
