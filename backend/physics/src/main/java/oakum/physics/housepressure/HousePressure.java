package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import oakum.physics.calculation.Violation;
import oakum.physics.duct.DuctSurface;
import oakum.physics.duct.RoundDuct;
import oakum.physics.moistair.MoistAir;
import org.jspecify.annotations.Nullable;

/** House pressure and make-up air: what every combination of the exhaust devices does to the house. */
public final class HousePressure {
    public static final Calculation<HousePressureInput, HousePressureResult> CALCULATION = Calculation.declare(
                    "house-pressure",
                    "1.1",
                    "House pressure and make-up air",
                    HousePressureInput.class,
                    HousePressureResult.class)
            .purpose("Says how far below outdoors every combination of the exhaust pulls the house, with make-up air"
                    + " working and failed, and what the make-up air needs.")
            .equation("Σ ṁ in = Σ ṁ out, with ṁ = ρ Q", Citations.AIR)
            .equation("Q = Q50 (Δp / 50 Pa)^n, so Δp = 50 Pa (Qnet / Q50)^(1/n) without openings", Citations.POWER_LAW)
            .equation(
                    "ln Q ± √(ln²(1 ± u) + (un ln(Δp/50 Pa))²) for the ends of the envelope's interval", Citations.GUM)
            .equation(
                    "pmax (1 − (Q/Qmax)²) = pd (Q/Qmax)² + Δp for each fan with a known shut-off", Citations.FAN_CURVE)
            .equation("Q = Cd A √(2 Δp/ρ) for an opening with a sharp edge", Citations.ORIFICE)
            .equation("Q = A √(2 Δp / (ρ (1 + f L/D + ΣC))) for an opening with a duct", Citations.DUCTS)
            .equation("P = ṁ cp (Tsup − Tout), I = P/U (single phase) or P/(√3 U)", Citations.HEAT)
            .equation("Tmix = (ṁ1 T1 + ṁ2 T2)/(ṁ1 + ṁ2)", Citations.HEAT)
            .equation("F = Fdc + W A Δp/(2 (W − d))", Citations.DOOR)
            .source(Citations.POWER_LAW)
            .source(Citations.GUM)
            .source(Citations.FAN_CURVE)
            .source(Citations.ORIFICE)
            .source(Citations.DUCTS)
            .source(Citations.AIR)
            .source(Citations.HEAT)
            .source(Citations.DOOR)
            .caution(Cautions.COMBUSTION)
            .caution(Cautions.INTERLOCK)
            .caution(Cautions.ELECTRICAL)
            .caution(Cautions.GAS)
            .caution(Cautions.WEATHER)
            .caution(Caution.CODE_AUTHORITY)
            .validation("Two lines of a public table of hood depressurisation agree; the coupled solution has no"
                    + " published example and was computed a second time by independent code.")
            .by(HousePressure::compute);

    private HousePressure() {}

    private static HousePressureResult compute(HousePressureInput input) {
        requireConsistent(input);
        House house = new House(input);
        List<House.Solved> solved = house.combinations();
        List<Combination> combinations =
                solved.stream().map(House.Solved::combination).toList();
        Combination worst = combinations.get(0);
        Combination coupled = greatest(combinations, Combination::coupledPressurePa);
        Combination failed = greatest(combinations, Combination::failedPressurePa);
        double failedCoupledPa =
                greatest(combinations, Combination::failedCoupledPressurePa).failedCoupledPressurePa();
        List<MakeUpUnitResult> units =
                input.makeUpUnits().stream().map(u -> unit(input, house, u)).toList();
        double limit = input.limit().workingPa();
        double failedLimit = input.limit().afterFailurePa();
        boolean ranged = LeakBound.known(input);
        House.Solved worstSolved = solved.get(0);
        House.Solved coupledSolved = of(solved, coupled);
        House.Solved failedSolved = of(solved, failed);
        Integer mostCurrent = indexOfGreatest(units, MakeUpUnitResult::currentA);
        Integer fastest = indexOfGreatest(units, MakeUpUnitResult::ductVelocityMPerS);
        Ventilator ventilator = input.ventilator();
        Door door = input.door();
        return new HousePressureResult(
                worst.running(),
                worst.netExhaustM3PerS(),
                worst.housePressurePa(),
                worst.verdict(),
                ranged ? house.depressurisationPa(worstSolved.on(), true, false, LeakBound.MOST) : null,
                ranged ? house.depressurisationPa(worstSolved.on(), true, false, LeakBound.LEAST) : null,
                coupled.coupledPressurePa(),
                coupled.coupledVerdict(),
                ranged ? house.depressurisationPa(coupledSolved.on(), true, true, LeakBound.MOST) : null,
                ranged ? house.depressurisationPa(coupledSolved.on(), true, true, LeakBound.LEAST) : null,
                limit,
                house.makeUpNeededM3PerS(solved, limit, false),
                house.makeUpNeededM3PerS(solved, limit, true),
                units.isEmpty()
                        ? null
                        : (Double) units.stream()
                                .mapToDouble(MakeUpUnitResult::heaterPowerW)
                                .sum(),
                ratingW(input),
                mostCurrent == null ? null : units.get(mostCurrent).currentA(),
                mostCurrent == null ? null : allowedA(input.makeUpUnits().get(mostCurrent)),
                fastest == null ? null : units.get(fastest).ductVelocityMPerS(),
                fastest == null ? null : input.makeUpUnits().get(fastest).ductVelocityLimitMPerS(),
                failed.failedPressurePa(),
                failedCoupledPa,
                failedLimit,
                failed.failedVerdict(),
                ranged ? house.depressurisationPa(failedSolved.on(), false, false, LeakBound.MOST) : null,
                ranged ? house.depressurisationPa(failedSolved.on(), false, false, LeakBound.LEAST) : null,
                combinations.stream()
                        .map(Combination::interlock)
                        .max(Comparator.naturalOrder())
                        .orElseThrow(),
                house.exhaustBorneM3PerS(failedLimit),
                ventilator == null ? null : (Double) ventilator.imbalanceFraction(),
                door == null ? null : (Double) door.forceN(Math.max(0, worst.housePressurePa())),
                door == null ? null : (Double) door.forceN(Math.max(0, failed.failedPressurePa())),
                door == null ? null : doorVerdict(door, failed.failedPressurePa()),
                house.air().pressurePa(),
                house.air().countKgPerM3(),
                house.air().densityKgPerM3(input.indoorTemperatureC()),
                house.air().densityKgPerM3(input.outdoorTemperatureC()),
                house.greatestErrorKgPerS(),
                combinations,
                input.devices().stream().map(d -> deviceFlow(house, solved, d)).toList(),
                units,
                PressureNotices.of(input, house, worst, failed, units));
    }

    private static Combination greatest(List<Combination> combinations, ToDoubleFunction<Combination> pressure) {
        return combinations.stream().max(Comparator.comparingDouble(pressure)).orElseThrow();
    }

    private static House.Solved of(List<House.Solved> solved, Combination combination) {
        return solved.stream()
                .filter(s -> s.combination().equals(combination))
                .findFirst()
                .orElseThrow();
    }

    private static @Nullable Integer indexOfGreatest(
            List<MakeUpUnitResult> units, Function<MakeUpUnitResult, @Nullable Double> value) {
        Integer found = null;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < units.size(); i++) {
            Double v = value.apply(units.get(i));
            if (v != null && v > greatest) {
                greatest = v;
                found = i;
            }
        }
        return found;
    }

    /** The ratings together; null where one of them is open, because the sum would then say nothing. */
    private static @Nullable Double ratingW(HousePressureInput input) {
        double sum = 0;
        for (MakeUpUnit unit : input.makeUpUnits()) {
            Double rating = unit.heaterRatingW();
            if (rating == null) {
                return null;
            }
            sum += rating;
        }
        return input.makeUpUnits().isEmpty() ? null : (Double) sum;
    }

    private static @Nullable Double allowedA(MakeUpUnit unit) {
        Double circuit = unit.circuitA();
        return circuit == null ? null : (Double) (circuit / unit.circuitFactor());
    }

    private static @Nullable Verdict doorVerdict(Door door, double pressurePa) {
        Double limit = door.forceLimitN();
        return limit == null ? null : Verdict.atMost(door.forceN(Math.max(0, pressurePa)), 0, limit);
    }

    private static DeviceFlow deviceFlow(House house, List<House.Solved> solved, ExhaustDevice device) {
        Combination worst = solved.stream()
                .filter(s -> s.on().contains(device))
                .findFirst()
                .orElseThrow()
                .combination();
        return new DeviceFlow(
                device.id(),
                device.label(),
                device.airflowM3PerS(),
                house.movedM3PerS(device, worst.coupledPressurePa()),
                house.movedM3PerS(device, worst.failedCoupledPressurePa()));
    }

    private static MakeUpUnitResult unit(HousePressureInput input, House house, MakeUpUnit unit) {
        double massFlow = house.massFlowKgPerS(unit);
        double outdoorC = input.outdoorTemperatureC();
        double power = MakeUpHeat.powerW(massFlow, outdoorC, house.wantedC(unit));
        Double rating = unit.heaterRatingW();
        double delivered = rating == null || rating >= power
                ? house.wantedC(unit)
                : outdoorC + rating / (massFlow * Air.SPECIFIC_HEAT_J_PER_KG_K);
        // in milder weather the heater reaches what is wanted, so duct and outlet are judged with air that warm
        double wantedKgPerM3 = house.air().densityKgPerM3(house.wantedC(unit));
        double actualM3PerS = massFlow / wantedKgPerM3;
        double followed = house.followedKgPerS(unit);
        Double current = currentA(unit, power);
        Double drawn = currentA(unit, rating == null ? power : Math.max(power, rating));
        Double allowed = allowedA(unit);
        RoundDuct duct = duct(unit);
        Double velocity = duct == null ? null : (Double) duct.velocityMPerS(actualM3PerS);
        Double velocityLimit = unit.ductVelocityLimitMPerS();
        Double outlet = unit.outletAreaM2();
        Double free = unit.outletFreeFraction();
        Double mixes = unit.mixesWithM3PerS();
        Double openSignal = unit.openSignalWithinS();
        Double within = input.limit().failedWithinS();
        return new MakeUpUnitResult(
                unit.id(),
                unit.label(),
                massFlow,
                followed == 0 ? null : (Double) (massFlow / followed),
                power,
                rating == null ? null : Verdict.atMost(power, 0, rating),
                delivered,
                current,
                drawn == null || allowed == null ? null : Verdict.atMost(drawn, 0, allowed),
                velocity,
                velocity == null || velocityLimit == null ? null : Verdict.atMost(velocity, 0, velocityLimit),
                duct == null || unit.ductLengthM() == null
                        ? null
                        : (Double) duct.dropPa(actualM3PerS, wantedKgPerM3, MoistAir.viscosityPaS(house.wantedC(unit))),
                outlet == null || free == null
                        ? null
                        : (Double) MakeUpHeat.outletVelocityMPerS(actualM3PerS, outlet, free),
                mixes == null ? null : mixedC(house, massFlow, delivered, mixes, input.indoorTemperatureC()),
                mixes == null ? null : mixedC(house, massFlow, outdoorC, mixes, input.indoorTemperatureC()),
                openSignal == null || within == null ? null : Verdict.atMost(openSignal, 0, within));
    }

    private static @Nullable Double currentA(MakeUpUnit unit, double heaterW) {
        Double voltage = unit.voltageV();
        Double fan = unit.fanPowerW();
        return voltage == null ? null : (Double) unit.phases().currentA(heaterW + (fan == null ? 0 : fan), voltage);
    }

    private static @Nullable RoundDuct duct(MakeUpUnit unit) {
        Double diameter = unit.ductDiameterM();
        Double length = unit.ductLengthM();
        DuctSurface surface = unit.ductSurface();
        return diameter == null
                ? null
                : new RoundDuct(diameter, length == null ? 0 : length, surface == null ? 0 : surface.roughnessM(), 0);
    }

    private static @Nullable Double mixedC(
            House house, double massFlowKgPerS, double temperatureC, double mixesWithM3PerS, double indoorC) {
        double houseAir = mixesWithM3PerS * house.air().exhaustKgPerM3();
        return massFlowKgPerS + houseAir == 0
                ? null
                : (Double) MakeUpHeat.mixedC(massFlowKgPerS, temperatureC, houseAir, indoorC);
    }

    private static void requireConsistent(HousePressureInput input) {
        List<Violation> found = new ArrayList<>();
        if (input.flowBasis() == FlowBasis.LOCAL && input.flowTemperatureC() == null) {
            found.add(Violation.of(
                    "flowTemperatureC",
                    "",
                    "Flows that count in air of this place need the temperature at which they count"
                            + " (flowTemperatureC).",
                    ""));
        }
        Set<String> ids = new HashSet<>();
        Set<String> makeUp = new HashSet<>();
        for (int i = 0; i < input.makeUpUnits().size(); i++) {
            MakeUpUnit unit = input.makeUpUnits().get(i);
            String at = "makeUpUnits[" + i + "]";
            id(at, unit.id(), ids, found);
            makeUp.add(unit.id());
            if (unit.ductLengthM() != null && (unit.ductDiameterM() == null || unit.ductSurface() == null)) {
                found.add(missing(at, "ductSurface", "A duct with a length needs its diameter and surface."));
            }
        }
        for (int i = 0; i < input.openings().size(); i++) {
            PassiveOpening opening = input.openings().get(i);
            String at = "openings[" + i + "]";
            id(at, opening.id(), ids, found);
            if (opening.motorDamper()) {
                makeUp.add(opening.id());
            }
            if (opening.ductLengthM() != null && opening.ductSurface() == null) {
                found.add(missing(at, "ductSurface", "A duct with a length needs its surface."));
            }
            Double opens = opening.opensPa();
            Double full = opening.fullyOpenPa();
            if ((opens == null) != (full == null)) {
                found.add(missing(
                        at,
                        opens == null ? "opensPa" : "fullyOpenPa",
                        "A barometric damper needs both of its pressures."));
            } else if (opens != null && full != null && full <= opens) {
                found.add(Violation.of(
                        at + ".fullyOpenPa",
                        full,
                        "A barometric damper is fully open (" + at
                                + ".fullyOpenPa) above the pressure at which it begins" + " to open; " + full
                                + " Pa is not above " + opens + " Pa.",
                        ""));
            }
        }
        for (int i = 0; i < input.devices().size(); i++) {
            ExhaustDevice device = input.devices().get(i);
            id("devices[" + i + "]", device.id(), ids, found);
            String named = device.makeUp();
            if (named != null && !named.isEmpty() && !makeUp.contains(named)) {
                found.add(Violation.of(
                        "devices[" + i + "].makeUp",
                        named,
                        "\"" + named + "\" is neither a make-up unit nor an opening with a motor damper.",
                        ""));
            }
        }
        if (!found.isEmpty()) {
            throw new Refused(found);
        }
    }

    private static Violation missing(String at, String field, String sentence) {
        return Violation.of(at + "." + field, "", sentence + " (" + at + "." + field + " is missing.)", "");
    }

    private static void id(String at, String id, Set<String> seen, List<Violation> found) {
        if (!id.matches("[A-Za-z0-9_-]+")) {
            found.add(Violation.of(at + ".id", id, "\"" + id + "\" is no id: use letters, digits, - and _.", ""));
        } else if (!seen.add(id)) {
            found.add(Violation.of(at + ".id", id, "The id \"" + id + "\" stands twice in this house.", ""));
        }
    }
}
