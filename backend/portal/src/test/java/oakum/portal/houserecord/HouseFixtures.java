package oakum.portal.houserecord;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.physics.housepressure.DeviceKind;
import oakum.portal.people.AsPortal;

/** Houses for tests: small, high up, with a range hood. */
public final class HouseFixtures {
    private static final AtomicInteger NUMBERS = new AtomicInteger();

    private HouseFixtures() {}

    public static final String MEASURES = """
            {"name": "Saddle Spruce", "place": "Spruce Hollow", "latitudeDeg": 37.5, "longitudeDeg": -106.5,
             "altitudeM": 2350, "timeZone": "America/Denver", "stage": "DESIGN", "floorAreaM2": 144, "netVolumeM3": 446,
             "volumeWithFloorsM3": 446, "envelopeAreaM2": 444, "bedroomCount": 3, "designOutdoorC": -25}
            """;

    public static HouseMeasures measures() {
        return measures("America/Denver");
    }

    private static HouseMeasures measures(String timeZone) {
        return new HouseMeasures(
                "Saddle Spruce",
                "Spruce Hollow",
                37.5,
                -106.5,
                2350,
                timeZone,
                Stage.DESIGN,
                144,
                446,
                446,
                444,
                3,
                -25);
    }

    /** A new house that nobody else uses. */
    public static String house(Houses houses) {
        return house(houses, "America/Denver");
    }

    /** The same in another time zone. */
    public static String house(Houses houses, String timeZone) {
        String id = "T" + NUMBERS.incrementAndGet();
        AsPortal.run(() -> houses.create(id, measures(timeZone), "opened"));
        return id;
    }

    /** 400 cfm of hood and 380 cfm of make-up air. */
    public static AirPart air(double hoodM3PerS) {
        return new AirPart(
                new AirPart.Tightness(0.6, VolumeBasis.NET, 268 / 3600.0, 0.65, null),
                List.of(new AirPart.Exhaust(
                        "rangeHood", "Range hood", DeviceKind.RANGE_HOOD, hoodM3PerS, null, false, "makeUpUnit")),
                List.of(new AirPart.MakeUp(
                        "makeUpUnit",
                        "Make-up unit",
                        0.17934,
                        0.2,
                        7000.0,
                        15,
                        240.0,
                        40.0,
                        0.1,
                        0.7,
                        60.0,
                        "rangeHood")),
                List.of(),
                null,
                null,
                List.of(),
                new AirPart.AirLimits(5, 10.0, 1.0, 25.0, "firm rules, edition 7"));
    }
}
