package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Notice;
import org.jspecify.annotations.Nullable;

/** What the house pressure says beside its numbers. */
final class PressureNotices {
    static final double CFM = 0.3048 * 0.3048 * 0.3048 / 60;
    private static final double CURVE_WANTED_ABOVE_M3_PER_S = 300 * CFM;
    private static final double DRYER_LEAST_M3_PER_S = 100 * CFM;
    private static final double DRYER_MOST_M3_PER_S = 225 * CFM;
    private static final double OUTLET_MOST_M_PER_S = 500 * 0.3048 / 60;
    static final double COOLEST_DELIVERED_C = 12.8;
    private static final double WIDEST_WITHOUT_MOTOR_M = 8 * 0.0254;
    private static final double MOST_IMBALANCE = 0.10;
    private static final double LEAST_MATCH = 0.8;
    private static final double MOST_MATCH = 1.0;
    private static final double NEAR_SEA_LEVEL_M = 300;

    private final HousePressureInput input;
    private final List<Notice> said = new ArrayList<>();

    private PressureNotices(HousePressureInput input) {
        this.input = input;
    }

    static List<Notice> of(
            HousePressureInput input,
            House house,
            Combination worst,
            Combination failed,
            List<MakeUpUnitResult> units) {
        PressureNotices notices = new PressureNotices(input);
        notices.aboutTheBasis(house);
        notices.aboutTheRange("housePressurePa", "The house pressure", worst.housePressurePa());
        notices.aboutTheRange("coupledPressurePa", "The house pressure with fan curves", worst.coupledPressurePa());
        notices.aboutTheRange(
                "failedPressurePa", "The house pressure with make-up air failed", failed.failedPressurePa());
        notices.aboutTheLimit();
        notices.aboutDevices();
        notices.aboutTheVentilator();
        notices.aboutOpenings();
        for (int i = 0; i < units.size(); i++) {
            notices.aboutUnit(input.makeUpUnits().get(i), units.get(i), "makeUpUnits[" + i + "]");
        }
        return List.copyOf(notices.said);
    }

    private void aboutTheBasis(House house) {
        said.add(Notice.note(
                "flows-count-as",
                "flowBasis",
                switch (input.flowBasis()) {
                    case STANDARD -> "Flows count in standard air of 1.2041 kg/m³, wherever the house stands.";
                    case LOCAL ->
                        text(
                                "Flows count in air of this place at %s °C: %.4f kg/m³.",
                                input.flowTemperatureC(), house.air().countKgPerM3());
                    case OWN_STATE ->
                        text(
                                "Each flow counts at its own temperature and this altitude; sums count in indoor air of"
                                        + " %.4f kg/m³.",
                                house.air().countKgPerM3());
                },
                Citations.AIR));
        boolean curves = input.devices().stream().anyMatch(d -> d.shutOffPa() != null);
        if (curves && input.flowBasis() != FlowBasis.OWN_STATE && input.altitudeM() > NEAR_SEA_LEVEL_M) {
            said.add(Notice.note(
                    "fan-pressure-as-entered",
                    "flowBasis",
                    text(
                            "Shut-off pressures are taken as entered. A fan rated in standard air reaches %.2f of its"
                                    + " pressure at this altitude.",
                            house.air().densityKgPerM3(input.indoorTemperatureC()) / Air.STANDARD_KG_PER_M3),
                    Citations.AIR));
        }
    }

    private void aboutTheRange(String field, String what, double pressurePa) {
        double size = Math.abs(pressurePa);
        if (size > 100) {
            said.add(Notice.advice(
                    "outside-power-law",
                    field,
                    text(
                            "%s, %.1f Pa, is above 100 Pa, outside the range of the power law: it says far too much, not"
                                    + " how much.",
                            what, pressurePa),
                    Citations.POWER_LAW));
        } else if (size > 0 && size < 1) {
            said.add(Notice.note(
                    "outside-power-law",
                    field,
                    text("%s, %.2f Pa, is below 1 Pa: wind and warm air rule there.", what, pressurePa),
                    Citations.POWER_LAW));
        }
    }

    private void aboutTheLimit() {
        PressureLimit limit = input.limit();
        if (limit.origin() == LimitOrigin.CODE && (isEmpty(limit.confirmedBy()) || isEmpty(limit.place()))) {
            said.add(Notice.advice(
                    "limit-not-confirmed",
                    "limit.confirmedBy",
                    "A limit from a code needs its place and who confirmed it for this house.",
                    Citations.PROPOSED));
        }
        if (input.appliances() == Appliances.ROOM_AIR) {
            said.add(Notice.advice(
                    "appliance-takes-room-air",
                    "appliances",
                    "An appliance takes air from the rooms: its own limit may be lower, a spillage test and CO decide,"
                            + " and the interlock must inhibit the exhaust, not only sound an alarm.",
                    Citations.PROPOSED));
        }
    }

    private void aboutDevices() {
        for (int i = 0; i < input.devices().size(); i++) {
            ExhaustDevice device = input.devices().get(i);
            String at = "devices[" + i + "].";
            double flow = device.airflowM3PerS();
            if (device.kind() == DeviceKind.RANGE_HOOD
                    && flow > CURVE_WANTED_ABOVE_M3_PER_S
                    && device.shutOffPa() == null) {
                said.add(Notice.advice(
                        "fan-curve-wanted",
                        at + "shutOffPa",
                        text(
                                "%s moves %.0f m³/h (%.0f cfm): in a tight house its real flow needs the fan's shut-off"
                                        + " pressure.",
                                device.label(), flow * 3600, flow / CFM),
                        Citations.PROPOSED));
            }
            if (device.kind() == DeviceKind.DRYER && (flow > DRYER_MOST_M3_PER_S || flow < DRYER_LEAST_M3_PER_S)) {
                said.add(Notice.advice(
                        "dryer-flow-unusual",
                        at + "airflowM3PerS",
                        text(
                                "A household dryer moves 170 to 380 m³/h (100 to 225 cfm; 135 cfm is a design value);"
                                        + " %.0f m³/h (%.0f cfm) needs a measurement or the dryer duct calculation.",
                                flow * 3600, flow / CFM),
                        Citations.DRYER_AIR));
            }
        }
    }

    private void aboutTheVentilator() {
        Ventilator ventilator = input.ventilator();
        if (ventilator == null) {
            return;
        }
        if (ventilator.imbalanceFraction() > MOST_IMBALANCE) {
            said.add(Notice.advice(
                    "ventilator-out-of-balance",
                    "ventilator",
                    text(
                            "The ventilator's flows are %.0f %% of the larger apart; 10 %% is usual at most.",
                            ventilator.imbalanceFraction() * 100),
                    Citations.BALANCE_PRACTICE));
        }
        if (ventilator.netExhaustM3PerS() < 0) {
            said.add(Notice.note(
                    "surplus-supply-left-out",
                    "ventilator",
                    "The ventilator brings in more than it takes out; this is not counted, because it can stop while the"
                            + " exhaust runs on.",
                    Citations.PROPOSED));
        }
    }

    private void aboutOpenings() {
        for (int i = 0; i < input.openings().size(); i++) {
            PassiveOpening opening = input.openings().get(i);
            String at = "openings[" + i + "]";
            if (opening.opensPa() != null && input.appliances() == Appliances.ROOM_AIR) {
                said.add(Notice.advice(
                        "barometric-damper-with-open-appliance",
                        at + ".opensPa",
                        "Minnesota prohibits a barometric damper in a passive make-up opening where an atmospherically"
                                + " vented appliance is installed; ask what holds at this place.",
                        Citations.MINNESOTA));
            }
            if (opening.diameterM() > WIDEST_WITHOUT_MOTOR_M && !opening.motorDamper()) {
                said.add(Notice.note(
                        "wide-opening-without-motor",
                        at + ".motorDamper",
                        text(
                                "%s is wider than 203 mm (8 in.): Minnesota requires a motor damper interlocked with the"
                                        + " largest exhaust; ask what holds at this place.",
                                opening.label()),
                        Citations.MINNESOTA));
            }
            if (opening.motorDamper() && neverNamed(opening.id())) {
                neverStarts(at, opening.label());
            }
        }
    }

    private void aboutUnit(MakeUpUnit unit, MakeUpUnitResult result, String at) {
        if (neverNamed(unit.id())) {
            neverStarts(at, unit.label());
        }
        Double match = result.matchFraction();
        if (match != null && (match < LEAST_MATCH || match > MOST_MATCH)) {
            said.add(Notice.note(
                    "make-up-match",
                    at + ".airflowM3PerS",
                    text(
                            "%s brings %.0f %% of the mass of the exhaust it follows; 80 to 100 %% is usual.",
                            unit.label(), match * 100),
                    Citations.PROPOSED));
        }
        if (result.deliveredTemperatureC() < COOLEST_DELIVERED_C) {
            said.add(deliveredCold(at + ".supplyTemperatureC", unit.label(), result.deliveredTemperatureC()));
        }
        Double outlet = result.outletVelocityMPerS();
        if (outlet != null && outlet > OUTLET_MOST_M_PER_S) {
            said.add(Notice.advice(
                    "outlet-fast",
                    at + ".outletAreaM2",
                    text(
                            "%s leaves its outlet at %.1f m/s (%.0f fpm); at the cook's feet 1.5 to 2.5 m/s (300 to 500"
                                    + " fpm) is comfortable.",
                            unit.label(), outlet, outlet / 0.3048 * 60),
                    Citations.OUTLET_PRACTICE));
        }
    }

    static Notice deliveredCold(String field, String label, double temperatureC) {
        return Notice.advice(
                "delivered-air-cold",
                field,
                text(
                        "%s delivers %.1f °C at the design outdoor temperature; 13 to 16 °C (55 to 60 °F) is advised.",
                        label, temperatureC),
                Citations.PROPOSED);
    }

    private boolean neverNamed(String id) {
        return input.devices().stream().noneMatch(d -> id.equals(d.makeUp()));
    }

    private void neverStarts(String at, String label) {
        said.add(Notice.advice(
                "make-up-never-starts",
                at,
                label + " follows no exhaust device, so it never starts; name it beside the device it follows.",
                Citations.PROPOSED));
    }

    static boolean isEmpty(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private static String text(String format, @Nullable Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
