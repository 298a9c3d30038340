package oakum.portal.demo;

import java.util.List;
import java.util.stream.IntStream;
import oakum.physics.housepressure.DeviceKind;
import oakum.portal.houserecord.AirPart;
import oakum.portal.houserecord.HeatPart;
import oakum.portal.houserecord.HouseMeasures;
import oakum.portal.houserecord.MoisturePart;
import oakum.portal.houserecord.SensorsPart;
import oakum.portal.houserecord.Stage;
import oakum.portal.houserecord.VolumeBasis;
import oakum.portal.houserecord.WaterPart;
import org.jspecify.annotations.Nullable;

/**
 * The records of the invented houses, but for their enclosures. Capacities are plausible values from memory; places, houses and
 * events are invented. Flows are given in cubic feet a minute and sizes in inches where the firm speaks of them so.
 */
final class DemoRecords {
    private static final double CUBIC_FOOT_M3 = 0.028316846592;
    private static final double INCH_M = 0.0254;
    private static final String FIRM_RULES = "firm rules, edition 7";

    private DemoRecords() {}

    static double cfm(double cubicFeetPerMinute) {
        return cubicFeetPerMinute * CUBIC_FOOT_M3 / 60;
    }

    static double litresPerSecond(double flow) {
        return flow / 1000;
    }

    static double cubicMetresPerHour(double flow) {
        return flow / 3600;
    }

    /** What one demo house holds. */
    record DemoHouse(
            String id,
            HouseMeasures measures,
            AirPart air,
            HeatPart heat,
            MoisturePart moisture,
            WaterPart water,
            SensorsPart sensors) {}

    static DemoHouse h1() {
        return new DemoHouse(
                "H1",
                new HouseMeasures(
                        "Saddle Spruce",
                        "Spruce Hollow",
                        37.8,
                        -106.9,
                        2350,
                        "America/Denver",
                        Stage.DESIGN,
                        144,
                        446,
                        446,
                        444,
                        3,
                        -25,
                        null),
                h1Air(400),
                new HeatPart(
                        3500.0, 20.0, heatPump("Ducted heat pump", 5300, 0.80, point("designCold", -25, 4600)), null),
                moisture(
                        0.3125,
                        months(
                                new double[] {-9, -7, -2, 3, 8, 13, 16, 15, 11, 5, -2, -8},
                                new double[] {0.70, 0.68, 0.62, 0.55, 0.52, 0.48, 0.56, 0.60, 0.57, 0.56, 0.64, 0.70}),
                        limit("mild", 0, 0.40),
                        limit("cold", -10, 0.35),
                        limit("deepCold", -25, 0.28)),
                water(250, "mechanical room", 21, null),
                sensors(
                        place("living", "Living room", "temperature, humidity, CO₂", 0.62, 0.45),
                        place("filterDrop", "Across the deep filter", "pressure drop", 0.24, 0.35),
                        place("northSheathing", "North sheathing, low", "wood moisture", 0.04, 0.25)));
    }

    static AirPart h1Air(double hoodCfm) {
        return new AirPart(
                new AirPart.Tightness(0.6, VolumeBasis.NET, cubicMetresPerHour(268), 0.65, null),
                List.of(hood(hoodCfm)),
                List.of(new AirPart.MakeUp(
                        "kitchen",
                        "Make-up air for the range hood",
                        cfm(380),
                        0.200,
                        7000.0,
                        15,
                        240.0,
                        40.0,
                        0.12,
                        0.65,
                        15.0,
                        "rangeHood")),
                List.of(),
                ventilation(40, 40, 35.6, 0.76),
                airHandler(500, 230, 125, 60, 5300),
                List.of(filter("20×25×5", 20, 25, 5, 1, 14, 9)),
                limits());
    }

    static DemoHouse h2() {
        return new DemoHouse(
                "H2",
                new HouseMeasures(
                        "North Tamarack",
                        "North Tamarack",
                        47.5,
                        -93.8,
                        430,
                        "America/Chicago",
                        Stage.CLOSE_UP,
                        268,
                        696,
                        759,
                        502,
                        4,
                        -30,
                        null),
                new AirPart(
                        new AirPart.Tightness(0.6, VolumeBasis.NET, cubicMetresPerHour(418), 0.65, null),
                        List.of(hood(300)),
                        List.of(makeUp(285)),
                        List.of(),
                        ventilation(60, 60, 57.7, 0.76),
                        airHandler(700, 320, 125, 60, 7000),
                        List.of(filter("20×20×5", 20, 20, 5, 2, 14, 9)),
                        limits()),
                new HeatPart(
                        5100.0, 20.0, heatPump("Ducted heat pump", 7000, 1.0, point("designCold", -30, 4200)), 5000.0),
                moisture(
                        0.3125,
                        months(
                                new double[] {-14, -11, -4, 4, 12, 17, 20, 18.5, 13, 6, -2.5, -10.5},
                                new double[] {0.75, 0.73, 0.70, 0.63, 0.62, 0.68, 0.70, 0.74, 0.76, 0.74, 0.78, 0.78}),
                        limit("mild", 0, 0.40),
                        limit("cold", -10, 0.33),
                        limit("deepCold", -30, 0.25)),
                water(300, "basement", 180, null),
                sensors(
                        place("northSheathing", "North sheathing, high", "wood moisture", 0.04, 0.6),
                        place("northEast", "North-east corner, high", "wood moisture", 0.96, 0.62)));
    }

    static DemoHouse h3() {
        return new DemoHouse(
                "H3",
                new HouseMeasures(
                        "Gannet Cove",
                        "Gannet Cove",
                        44.3,
                        -67.9,
                        15,
                        "America/New_York",
                        Stage.LATER,
                        157,
                        401,
                        429,
                        351,
                        3,
                        -17,
                        null),
                new AirPart(
                        new AirPart.Tightness(0.6, VolumeBasis.NET, cubicMetresPerHour(241), 0.65, null),
                        List.of(hood(300)),
                        List.of(makeUp(280)),
                        List.of(),
                        ventilation(40, 40, 37.6, 0.76),
                        airHandler(450, 200, 125, 62, 3500),
                        List.of(filter("16×25×4", 16, 25, 4, 1, 17, 11)),
                        limits()),
                new HeatPart(
                        3000.0, 20.0, heatPump("Ducted heat pump", 3500, 1.0, point("designCold", -17, 3600)), null),
                moisture(
                        0.3125,
                        months(
                                new double[] {-7, -6, -2, 4, 9, 14, 18, 17.5, 13.5, 8, 3, -3},
                                new double[] {0.76, 0.75, 0.75, 0.76, 0.80, 0.84, 0.85, 0.86, 0.84, 0.81, 0.80, 0.78}),
                        limit("mild", 0, 0.42),
                        limit("cold", -10, 0.35),
                        limit("deepCold", -17, 0.30)),
                water(190, "heater room with two transfer grilles", 12.6, 0.062),
                sensors(
                        place("living", "Living room", "temperature, humidity", 0.62, 0.3),
                        place("bedroom", "Primary bedroom", "CO₂, temperature, humidity", 0.35, 0.62),
                        place("bath", "Bath up", "humidity", 0.75, 0.62),
                        place("filterDrop", "Across the deep filter", "pressure drop", 0.2, 0.28),
                        place("pan", "Pan under the water heater", "leak", 0.28, 0.15),
                        place("northSheathing", "North sheathing, high", "wood moisture", 0.04, 0.6)));
    }

    /** The same part once a test has measured the tightness. */
    static AirPart measured(AirPart air, double q50M3PerH, double exponent, String day) {
        return new AirPart(
                new AirPart.Tightness(0.6, VolumeBasis.NET, cubicMetresPerHour(q50M3PerH), exponent, day),
                air.exhaust(),
                air.makeUp(),
                air.passiveOpenings(),
                air.ventilation(),
                air.airHandler(),
                air.filters(),
                air.limits());
    }

    /** A house of the care list: nothing of its design is in the record, only what its follow-up needs. */
    static HouseMeasures careHouse(String name, String place, double altitudeM, String timeZone) {
        return new HouseMeasures(
                name, place, 45, -90, altitudeM, timeZone, Stage.LATER, 165, 430, 455, 400, 3, -20, null);
    }

    private static AirPart.Exhaust hood(double flowCfm) {
        return new AirPart.Exhaust(
                "rangeHood", "Range hood", DeviceKind.RANGE_HOOD, cfm(flowCfm), 300.0, false, "kitchen");
    }

    private static AirPart.MakeUp makeUp(double flowCfm) {
        return new AirPart.MakeUp(
                "kitchen",
                "Make-up air for the range hood",
                cfm(flowCfm),
                0.200,
                6000.0,
                15,
                240.0,
                40.0,
                null,
                null,
                15.0,
                "rangeHood");
    }

    private static AirPart.Ventilation ventilation(
            double supplyLPerS, double exhaustLPerS, double requiredLPerS, double sensible) {
        return new AirPart.Ventilation(
                litresPerSecond(supplyLPerS),
                litresPerSecond(exhaustLPerS),
                litresPerSecond(requiredLPerS),
                0.50,
                sensible);
    }

    private static AirPart.AirHandler airHandler(
            double highCfm, double lowCfm, double staticLimitPa, double otherPa, double coolingW) {
        return new AirPart.AirHandler(cfm(highCfm), cfm(lowCfm), staticLimitPa, otherPa, coolingW, 0.40);
    }

    private static AirPart.Filter filter(
            String size, double widthIn, double heightIn, double depthIn, int count, double a, double b) {
        return new AirPart.Filter(
                "deep",
                "Deep filter " + size,
                widthIn * INCH_M,
                heightIn * INCH_M,
                depthIn * INCH_M,
                count,
                "MERV 13",
                "2017",
                a,
                b);
    }

    private static AirPart.AirLimits limits() {
        return new AirPart.AirLimits(5, 10.0, 1.0, 25.0, FIRM_RULES);
    }

    private static HeatPart.HeatPump heatPump(
            String label, double nominalW, double altitudeFactor, HeatPart.CapacityPoint... points) {
        return new HeatPart.HeatPump(label, nominalW, null, altitudeFactor, List.of(points));
    }

    private static HeatPart.CapacityPoint point(String id, double outdoorC, double capacityW) {
        return new HeatPart.CapacityPoint(id, outdoorC, capacityW, null);
    }

    /** Twelve monthly means, January first; invented like the places. */
    private static List<MoisturePart.OutdoorMonth> months(double[] outdoorC, double[] humidity) {
        String[] names = {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"};
        return IntStream.range(0, names.length)
                .mapToObj(i -> new MoisturePart.OutdoorMonth(names[i], outdoorC[i], humidity[i]))
                .toList();
    }

    private static MoisturePart moisture(
            double sourceKgPerH, List<MoisturePart.OutdoorMonth> months, MoisturePart.HumidityLimit... limits) {
        return new MoisturePart(sourceKgPerH, List.of(limits), null, null, months);
    }

    private static MoisturePart.HumidityLimit limit(String id, double outdoorC, double humidity) {
        return new MoisturePart.HumidityLimit(id, outdoorC, humidity, "the wall");
    }

    private static WaterPart water(double litres, String room, double roomM3, @Nullable Double grillesM2) {
        return new WaterPart(
                new WaterPart.Heater("Heat-pump water heater", WaterPart.HeaterKind.HEAT_PUMP, litres, 60.0, true),
                new WaterPart.HeaterRoom(room, roomM3, grillesM2),
                List.of(new WaterPart.LeakPath(
                        "tank",
                        "Water heater",
                        "pan under the tank",
                        "drain to the outside wall, seen from the path",
                        true,
                        true)));
    }

    private static SensorsPart sensors(SensorsPart.Place... places) {
        return new SensorsPart(List.of(places));
    }

    private static SensorsPart.Place place(String id, String label, String quantity, double x, double y) {
        return new SensorsPart.Place(id, label, quantity, label, x, y);
    }
}
