package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A house for tests, changed where a test needs it: sea level, standard air, 400 cfm at 50 Pa, nothing that runs. */
final class TestHouse {
    static final double CFM = 0.3048 * 0.3048 * 0.3048 / 60;
    static final double INCH = 0.0254;
    static final double FOOT = 0.3048;

    private double q50 = 400 * CFM;
    private double exponent = 0.65;
    private Double uncertainty;
    private Double exponentUncertainty;
    private double altitude;
    private double indoor = 21;
    private double outdoor = -25;
    private FlowBasis basis = FlowBasis.STANDARD;
    private Double flowTemperature;
    private Appliances appliances = Appliances.NONE;
    private PressureLimit limit =
            new PressureLimit(5, 10.0, 60.0, LimitOrigin.FIRM_RULE, "house pressure", "edition 7", null, null);
    private final List<ExhaustDevice> devices = new ArrayList<>();
    private Ventilator ventilator;
    private final List<PassiveOpening> openings = new ArrayList<>();
    private final List<MakeUpUnit> units = new ArrayList<>();
    private Door door;

    /** The demo's H1 with its flows in air of the place at the delivered temperature. */
    static TestHouse h1() {
        TestHouse h1 = new TestHouse().q50(268.0 / 3600);
        h1.altitude = 2350;
        h1.basis = FlowBasis.LOCAL;
        h1.flowTemperature = 15.0;
        return h1;
    }

    TestHouse q50(double m3PerS) {
        q50 = m3PerS;
        return this;
    }

    TestHouse exponent(double n) {
        exponent = n;
        return this;
    }

    TestHouse uncertainty(double fraction) {
        uncertainty = fraction;
        return this;
    }

    TestHouse exponentUncertainty(double halfWidth) {
        exponentUncertainty = halfWidth;
        return this;
    }

    TestHouse place(double altitudeM, double indoorC, double outdoorC) {
        altitude = altitudeM;
        indoor = indoorC;
        outdoor = outdoorC;
        return this;
    }

    TestHouse basis(FlowBasis given, double countC) {
        flowTemperature = countC;
        return basis(given);
    }

    TestHouse basis(FlowBasis given) {
        basis = given;
        return this;
    }

    TestHouse appliances(Appliances given) {
        appliances = given;
        return this;
    }

    TestHouse limit(double pa) {
        limit = new PressureLimit(pa, 10.0, 60.0, LimitOrigin.FIRM_RULE, "house pressure", "edition 7", null, null);
        return this;
    }

    TestHouse runs(String id, double m3PerS) {
        return device(id, DeviceKind.OTHER, m3PerS, Running.SOMETIMES, null, null, null);
    }

    TestHouse device(
            String id,
            DeviceKind kind,
            double m3PerS,
            Running running,
            String makeUp,
            Double shutOffPa,
            Double ductDropPa) {
        devices.add(new ExhaustDevice(id, id, kind, m3PerS, running, makeUp, shutOffPa, ductDropPa));
        return this;
    }

    TestHouse hood(double cfm, String makeUp, Double shutOffPa) {
        return device("hood", DeviceKind.RANGE_HOOD, cfm * CFM, Running.SOMETIMES, makeUp, shutOffPa, null);
    }

    TestHouse ventilator(double supplyM3PerS, double exhaustM3PerS) {
        ventilator = new Ventilator(supplyM3PerS, exhaustM3PerS);
        return this;
    }

    TestHouse opening(String id, double diameterM, Double opensPa, Double fullyOpenPa, boolean motor) {
        openings.add(new PassiveOpening(id, id, diameterM, 0.61, null, null, null, opensPa, fullyOpenPa, motor));
        return this;
    }

    TestHouse opening(PassiveOpening given) {
        openings.add(given);
        return this;
    }

    /** A unit like the demo's: delivers 15 °C, 7 kW, 240 V, 40 A circuit, 200 mm duct. */
    TestHouse makeUp(double m3PerS) {
        return makeUp(m3PerS, 7000);
    }

    TestHouse makeUp(double m3PerS, double heaterRatingW) {
        units.add(new MakeUpUnit(
                "mau",
                "make-up",
                m3PerS,
                FanPlace.AFTER_HEATER,
                15,
                heaterRatingW,
                null,
                240.0,
                Phases.SINGLE,
                40.0,
                1.25,
                0.2,
                null,
                null,
                6.0,
                0.1,
                0.65,
                null,
                15.0));
        return this;
    }

    TestHouse door(Door given) {
        door = given;
        return this;
    }

    HousePressureInput input() {
        return new HousePressureInput(
                q50,
                exponent,
                uncertainty,
                exponentUncertainty,
                altitude,
                indoor,
                outdoor,
                basis,
                flowTemperature,
                appliances,
                limit,
                devices,
                ventilator,
                openings,
                units,
                door);
    }

    HousePressureResult result() {
        return HousePressure.CALCULATION.calculate(input()).output();
    }

    Map<String, Combination> byId() {
        Map<String, Combination> map = new HashMap<>();
        result().combinations().forEach(c -> map.put(c.id(), c));
        return map;
    }
}
