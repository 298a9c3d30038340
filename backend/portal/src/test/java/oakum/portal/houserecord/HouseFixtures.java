package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.physics.housepressure.DeviceKind;
import oakum.physics.housepressure.LimitOrigin;
import oakum.portal.houserecord.standing.Binding;
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
        return measures(2350, "America/Denver");
    }

    public static HouseMeasures measuresAt(double altitudeM) {
        return measures(altitudeM, "America/Denver");
    }

    private static HouseMeasures measures(double altitudeM, String timeZone) {
        return new HouseMeasures(
                "Saddle Spruce",
                "Spruce Hollow",
                37.5,
                -106.5,
                altitudeM,
                timeZone,
                Stage.DESIGN,
                144,
                446,
                446,
                444,
                3,
                -25,
                null);
    }

    /** A new house that nobody else uses. */
    public static String house(Houses houses) {
        return house(houses, "America/Denver");
    }

    /** The same in another time zone. */
    public static String house(Houses houses, String timeZone) {
        String id = "T" + NUMBERS.incrementAndGet();
        AsPortal.run(() -> houses.create(id, measures(2350, timeZone), "opened"));
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
                        9000.0,
                        15,
                        240.0,
                        50.0,
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

    /** House pressure from the record, with what the record does not say typed in. */
    public static List<Binding> housePressure() {
        return List.of(
                Binding.of("q50M3PerS", "air.tightness.q50M3PerS"),
                Binding.of("exponent", "air.tightness.exponent"),
                Binding.of("altitudeM", "house.altitudeM"),
                Binding.of("outdoorTemperatureC", "house.designOutdoorC"),
                Binding.typed("indoorTemperatureC", "20", "usual"),
                Binding.typed("flowBasis", "STANDARD", "typed"),
                Binding.typed("appliances", "NONE", "all-electric house"),
                Binding.of("limit.workingPa", "air.limits.housePressurePa"),
                Binding.of("limit.failedPa", "air.limits.failedMakeUpPressurePa"),
                Binding.typed("limit.failedWithinS", "60", "firm rules, edition 7"),
                Binding.typed("limit.origin", LimitOrigin.FIRM_RULE.name(), "firm rules, edition 7"),
                Binding.of("limit.rule", "air.limits.source"),
                Binding.typed("limit.edition", "7", "firm rules, edition 7"),
                Binding.of(
                        "devices",
                        "air.exhaust",
                        Map.of(
                                "airflowM3PerS",
                                "ratedFlowM3PerS",
                                "makeUp",
                                "makeUpId",
                                "shutOffPa",
                                "shutOffPressurePa")),
                Binding.typed("devices[*].running", "SOMETIMES", "typed"),
                Binding.of(
                        "makeUpUnits",
                        "air.makeUp",
                        Map.of(
                                "airflowM3PerS", "flowM3PerS",
                                "supplyTemperatureC", "supplyC",
                                "heaterRatingW", "heaterRatedW",
                                "circuitA", "circuitRatedA",
                                "outletAreaM2", "outletGrossAreaM2",
                                "openSignalWithinS", "proofTimeS")),
                Binding.typed("makeUpUnits[*].fanPlace", "BEFORE_HEATER", "typed"),
                Binding.typed("makeUpUnits[*].phases", "SINGLE", "typed"),
                Binding.typed("makeUpUnits[*].circuitFactor", "1.25", "typed"));
    }

    /** Room air at a pressure from the record. */
    public static List<Binding> roomAir(String pressurePath) {
        return List.of(
                Binding.of("pressurePa", pressurePath),
                Binding.typed("dryBulbC", "20", "typed"),
                Binding.typed("belowFreezing", "OVER_ICE", "typed"),
                Binding.typed("relativeHumidityFraction", "0.4", "typed"));
    }
}
